import { Button } from 'react-aria-components/Button'
import { digitKeys, type Key } from '../keypad.ts'

/** Big number keys for a thumb. */
export const Digits = ({ onPress }: { readonly onPress: (key: Key) => void }) => (
  <div className="digits" role="group" aria-label="Keypad">
    {digitKeys.map((key) => (
      <Button
        key={key}
        className="key digit"
        // Those who use the keyboard type into the field; twelve more stops would only be in their way.
        excludeFromTabOrder
        aria-label={key === 'back' ? 'Rub out' : key === '.' ? 'point' : key}
        onPress={() => onPress(key)}
      >
        {key === 'back' ? '⌫' : key}
      </Button>
    ))}
  </div>
)
