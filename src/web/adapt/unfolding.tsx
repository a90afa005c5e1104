import { useId, useRef, useState, type ReactNode } from 'react'
import { Button } from 'react-aria-components/Button'

type UnfoldingProps = {
  readonly label: string
  readonly className: string
  /** Stands beside the button. */
  readonly beside?: ReactNode
  /** What opens; `close` puts it away again and brings the focus back to the button. */
  readonly children: (close: () => void) => ReactNode
}

/** A button that opens something on the page. Closed again it is only hidden, so that what was typed in it is still there. */
export const Unfolding = ({ label, className, beside, children }: UnfoldingProps) => {
  const [{ open, used }, setState] = useState({ open: false, used: false })
  const button = useRef<HTMLButtonElement>(null)
  const id = useId()
  const close = (): void => {
    setState({ open: false, used: true })
    button.current?.focus()
  }
  return (
    <>
      <div className="key-row">
        <Button
          ref={button}
          className={className}
          aria-expanded={open}
          aria-controls={id}
          onPress={() => setState({ open: !open, used: true })}
        >
          {open ? 'Close this' : label}
        </Button>
        {beside}
      </div>
      <div id={id} hidden={!open} className="different-body">
        {used ? children(close) : null}
      </div>
    </>
  )
}
