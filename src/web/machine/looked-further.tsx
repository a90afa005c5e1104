import { Button } from 'react-aria-components/Button'
import { moneyText } from '../../base/money.ts'
import type { MachineView } from '../../machine/view.ts'
import { choiceOf, type Choice } from './choice.ts'
import { useSheet } from './sheet.ts'

type LookedFurtherProps = { readonly further: MachineView; readonly onChoose: (choice: Choice) => void }

/** Less than this is not worth unsettling anyone for, in minor units. */
const worthSayingMinor = 20

/** Said when working the plan out further has found a better next move than the one on the card; the card stays as it is. */
export const LookedFurther = ({ further, onChoose }: LookedFurtherProps) => {
  const { view, document } = useSheet()
  if (view === null) return null
  const now = [further.next, ...further.others].find((move) => choiceOf(move) === choiceOf(view.next))
  const gainMinor = now?.lessMinor ?? 0
  if (gainMinor < worthSayingMinor) return null
  return (
    <p className="looked-further">
      Looked further: <strong>{further.next.name}</strong> brings{' '}
      <span className="figure">{moneyText(gainMinor, document.state.currency)}</span> more on average.{' '}
      <Button className="plain" onPress={() => onChoose(choiceOf(further.next))}>
        Do that instead
      </Button>
    </p>
  )
}
