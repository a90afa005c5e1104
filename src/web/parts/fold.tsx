import { useId, useState, type ReactNode } from 'react'

type FoldProps = {
  readonly title: ReactNode
  readonly children: ReactNode
  readonly startOpen?: boolean
  readonly className?: string
}

/** Something one tap away: a button that opens what is under it. The folded part is not in the page until it is opened. */
export const Fold = ({ title, children, startOpen = false, className = '' }: FoldProps) => {
  const [open, setOpen] = useState(startOpen)
  const id = useId()
  return (
    <div className={`fold ${className}`}>
      <button
        type="button"
        className="fold-head"
        aria-expanded={open}
        aria-controls={id}
        onClick={() => setOpen(!open)}
      >
        <span className="fold-mark" aria-hidden="true">
          {open ? '−' : '+'}
        </span>
        <span className="fold-title">{title}</span>
      </button>
      <div id={id} className="fold-body" hidden={!open}>
        {open ? children : null}
      </div>
    </div>
  )
}
