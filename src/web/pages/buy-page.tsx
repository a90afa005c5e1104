import { useEffect, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { BlueprintEntry } from '../../blueprint/entry.ts'
import { WhichMachine } from '../add/which-machine.tsx'
import { AnswerStrip } from '../buy/answer-strip.tsx'
import { AtAsking, LikelyFaults } from '../buy/at-asking.tsx'
import { DealFields } from '../buy/deal-fields.tsx'
import { advertFromDraft, buyDraftFromText, emptyBuyDraft, storedBuyDraft, withKind, type BuyDraft } from '../buy/draft.ts' // prettier-ignore
import { KeepAdvert } from '../buy/keep-advert.tsx'
import { KeptAdverts } from '../buy/kept-adverts.tsx'
import { lastKinds, rememberKind } from '../buy/last-kinds.ts'
import { MadeOf } from '../buy/made-of.tsx'
import { Questions } from '../buy/questions.tsx'
import { SaidFields } from '../buy/said-fields.tsx'
import { SpotChecks } from '../buy/spot-checks.tsx'
import { useBuying } from '../buy/use-buying.ts'
import { WantedFields } from '../buy/wanted-fields.tsx'
import { moneyText } from '../../base/money.ts'
import { Loading } from '../parts/loading.tsx'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { problemsElsewhere } from '../problems-at.ts'
import { useBlueprint, useBlueprints, useSettings } from '../queries.ts'
import { PageTitle } from '../router.tsx'
import { readStored, writeStored } from '../stored.ts'
import '../style/buy.css'

const fields = ['askingMinor', 'distanceKm', 'ageYears', 'wanted', 'minor']

/** An advert in front of you: the most to pay, what to ask, what to look at before paying. Needs the bench only to keep it. */
export const BuyPage = () => {
  const [draft, setDraft] = useState<BuyDraft>(() => buyDraftFromText(readStored('local', storedBuyDraft)) ?? emptyBuyDraft) // prettier-ignore
  const change = (part: Partial<BuyDraft>): void =>
    setDraft((before) => ({ ...withKind(before, part.blueprint ?? before.blueprint), ...part }))
  useEffect(() => writeStored('local', storedBuyDraft, JSON.stringify(draft)), [draft])
  const { data: entries, error } = useBlueprints()
  return (
    <div className="sheet buy">
      <PageTitle windowTitle="Worth buying?">Worth buying?</PageTitle>
      {entries === undefined ? (
        <Loading what="the blueprints" error={error} />
      ) : (
        <Weighing draft={draft} change={change} entries={entries} clear={() => setDraft(emptyBuyDraft)} />
      )}
      <KeptAdverts bench="own" />
    </div>
  )
}

type WeighingProps = {
  readonly draft: BuyDraft
  readonly change: (part: Partial<BuyDraft>) => void
  readonly entries: readonly BlueprintEntry[]
  readonly clear: () => void
}

const Weighing = ({ draft, change, entries, clear }: WeighingProps) => {
  const { data: blueprint, error } = useBlueprint(draft.blueprint)
  const { data: known, error: noSettings } = useSettings()
  const settings = known ?? (noSettings === null ? undefined : null)
  const currency = settings?.currency ?? 'GBP'
  const typed = advertFromDraft(draft, currency)
  const isReady = blueprint !== undefined && settings !== undefined && typed.kind === 'ok'
  const buying = useBuying(isReady ? { advert: typed.value, blueprint, settings } : null)
  const problems = typed.kind === 'refused' ? typed.problems : buying.problems
  const view = buying.weighed?.view ?? null
  useSaid(buying.settling ? null : view)
  const settled = buying.settling || buying.problems.length > 0 ? null : buying.weighed
  return (
    <>
      {draft.blueprint === '' ? (
        <LastKinds entries={entries} choose={(id) => change({ blueprint: id })} />
      ) : (
        <AnswerStrip buying={buying} asksPrice={draft.asking.trim() !== ''} />
      )}
      <WhichMachine
        entries={entries}
        draft={{ ...draft, name: draft.name }}
        change={({ replies, blueprint: kind }) => {
          if (kind !== undefined && kind !== '') rememberKind(kind)
          change({ ...(replies === undefined ? {} : { replies }), ...(kind === undefined ? {} : { blueprint: kind }) })
        }}
        problems={[]}
      />
      {draft.blueprint === '' ? null : (
        <>
          {error === null ? null : <Loading what="the blueprint" error={error} />}
          <SaidFields draft={draft} change={change} blueprint={blueprint} understood={view?.understood ?? null} />
          <DealFields draft={draft} change={change} problems={problems} currency={currency} blueprint={blueprint} />
          <WantedFields draft={draft} change={change} problems={problems} currency={currency} />
          <Problems problems={problemsElsewhere(problems, fields)} />
          {buying.failure === null ? null : <p className="problem">Could not be worked out: {buying.failure}</p>}
          {view === null || blueprint === undefined ? null : (
            <div aria-busy={buying.settling}>
              {draft.asking.trim() === '' ? null : <AtAsking view={view} />}
              <Questions view={view} draft={draft} change={change} />
              <LikelyFaults view={view} />
              <SpotChecks view={view} blueprint={blueprint} draft={draft} change={change} />
              <MadeOf view={view} />
              <KeepAdvert draft={draft} change={change} weighed={settled} kindName={blueprint.name} clear={clear} />
            </div>
          )}
          <Button className="plain" onPress={clear}>
            Clear, another advert
          </Button>
        </>
      )}
    </>
  )
}

/** Has a screen reader say the answer once it has settled. */
const useSaid = (
  view: {
    readonly ceiling: { readonly minor: number; readonly notEvenForNothing: boolean }
    readonly currency: 'GBP' | 'EUR' | 'USD' | 'AUD' | 'CAD' | 'NZD'
  } | null,
): void => {
  const text =
    view === null
      ? ''
      : view.ceiling.notEvenForNothing
        ? 'Not even for nothing'
        : `Pay at most ${moneyText(view.ceiling.minor, view.currency)}`
  useEffect(() => {
    if (text !== '') say(text)
  }, [text])
}

/** The kinds that were weighed last, one tap each. */
const LastKinds = ({
  entries,
  choose,
}: {
  readonly entries: readonly BlueprintEntry[]
  readonly choose: (id: string) => void
}) => {
  const last = lastKinds().flatMap((id) => entries.filter((entry) => entry.id === id))
  return last.length === 0 ? null : (
    <div role="group" aria-label="Weighed last" className="buy-last">
      {last.map(({ id, name }) => (
        <Button key={id} className="key" onPress={() => choose(id)}>
          {name}
        </Button>
      ))}
    </div>
  )
}
