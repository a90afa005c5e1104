import { QueryClientProvider } from '@tanstack/react-query'
import { lazy, Suspense } from 'react'
import { Head } from './head.tsx'
import { BenchPage } from './pages/bench-page.tsx'
import { MachinePage } from './pages/machine-page.tsx'
import { OutboxStrip } from './outbox/outbox-strip.tsx'
import { useChanges } from './live/use-changes.ts'
import { Live } from './parts/live.tsx'
import { makeQueryClient } from './queries.ts'
import { Link, PageTitle, useRoute } from './router.tsx'
import { useSignInNeeded } from './sign-in/needed.ts'
import { pathOf, type Route } from './routes.ts'

const SignInPage = lazy(async () => ({ default: (await import('./pages/sign-in-page.tsx')).SignInPage }))
const AddPage = lazy(async () => ({ default: (await import('./pages/add-page.tsx')).AddPage }))
const BuyPage = lazy(async () => ({ default: (await import('./pages/buy-page.tsx')).BuyPage }))
const AdvertPage = lazy(async () => ({ default: (await import('./pages/advert-page.tsx')).AdvertPage }))
const AirPage = lazy(async () => ({ default: (await import('./pages/air-page.tsx')).AirPage }))
const PhotosPage = lazy(async () => ({ default: (await import('./pages/photos-page.tsx')).PhotosPage }))
const FunctionsPage = lazy(async () => ({ default: (await import('./pages/functions-page.tsx')).FunctionsPage }))
const StripPage = lazy(async () => ({ default: (await import('./pages/strip-page.tsx')).StripPage }))
const StoryPage = lazy(async () => ({ default: (await import('./pages/story-page.tsx')).StoryPage }))
const CleanPage = lazy(async () => ({ default: (await import('./pages/clean-page.tsx')).CleanPage }))
const SalePage = lazy(async () => ({ default: (await import('./pages/sale-page.tsx')).SalePage }))
const ProofPage = lazy(async () => ({ default: (await import('./pages/proof-page.tsx')).ProofPage }))
const AskingPage = lazy(async () => ({ default: (await import('./pages/asking-page.tsx')).AskingPage }))
const BooksPage = lazy(async () => ({ default: (await import('./pages/books-page.tsx')).BooksPage }))
const PracticePage = lazy(async () => ({ default: (await import('./pages/practice-page.tsx')).PracticePage }))
const BlueprintsPage = lazy(async () => ({ default: (await import('./pages/blueprints-page.tsx')).BlueprintsPage }))
const SettingsPage = lazy(async () => ({ default: (await import('./pages/settings-page.tsx')).SettingsPage }))
const ShelfPage = lazy(async () => ({ default: (await import('./pages/shelf-page.tsx')).ShelfPage }))
const PartPage = lazy(async () => ({ default: (await import('./pages/part-page.tsx')).PartPage }))
const BlueprintPage = lazy(async () => ({ default: (await import('./pages/blueprint-page.tsx')).BlueprintPage }))

const client = makeQueryClient()

export const App = () => {
  const route = useRoute()
  const mustSignIn = useSignInNeeded()
  useChanges(client, 'bench' in route ? route.bench : 'own', !mustSignIn)
  return (
    <QueryClientProvider client={client}>
      <a className="skip" href="#main">
        Skip to the page
      </a>
      {mustSignIn ? null : <Head route={route} />}
      <OutboxStrip />
      <main id="main">
        <Suspense fallback={<p className="quiet">Fetching the page …</p>}>
          {mustSignIn ? <SignInPage /> : <Page key={pathOf(route)} route={route} />}
        </Suspense>
      </main>
      <Live />
    </QueryClientProvider>
  )
}

const Page = ({ route }: { readonly route: Route }) => {
  switch (route.kind) {
    case 'bench':
      return <BenchPage bench={route.bench} />
    case 'add':
      return <AddPage />
    case 'buy':
      return <BuyPage />
    case 'advert':
      return <AdvertPage bench={route.bench} id={route.id} />
    case 'practice':
      return <PracticePage />
    case 'settings':
      return <SettingsPage />
    case 'blueprints':
      return <BlueprintsPage />
    case 'blueprint':
      return <BlueprintPage id={route.id} />
    case 'machine':
      return <MachinePage bench={route.bench} id={route.id} />
    case 'air':
      return <AirPage bench={route.bench} id={route.id} />
    case 'photos':
      return <PhotosPage bench={route.bench} id={route.id} />
    case 'sale':
      return <SalePage bench={route.bench} id={route.id} />
    case 'functions':
      return <FunctionsPage bench={route.bench} id={route.id} />
    case 'strip':
      return <StripPage bench={route.bench} id={route.id} />
    case 'story':
      return <StoryPage bench={route.bench} id={route.id} />
    case 'clean':
      return <CleanPage bench={route.bench} id={route.id} />
    case 'proof':
      return <ProofPage bench={route.bench} id={route.id} />
    case 'asking':
      return <AskingPage bench={route.bench} id={route.id} />
    case 'books':
      return <BooksPage bench={route.bench} />
    case 'shelf':
      return <ShelfPage bench={route.bench} />
    case 'part':
      return <PartPage bench={route.bench} id={route.id} />
    case 'lost':
      return <LostPage path={route.path} />
  }
}

const LostPage = ({ path }: { readonly path: string }) => (
  <div className="sheet">
    <PageTitle windowTitle="Not here">There is no page at {path}</PageTitle>
    <p>
      <Link to={{ kind: 'bench', bench: 'own' }}>Go to the bench</Link>
    </p>
  </div>
)
