import { useLayoutEffect, useRef } from 'react'
import { useWidth } from '../use-width.ts'

type PictureProps = {
  readonly draw: (width: number) => Element
  /** What is drawn; the picture is drawn anew when this is another one. */
  readonly of: unknown
  /** What the picture shows, in words. */
  readonly description: string
}

/** A drawing to the width of its box, in the colours of the theme. */
export const Picture = ({ draw, of, description }: PictureProps) => {
  const frame = useRef<HTMLDivElement>(null)
  const width = useWidth(frame)
  const latest = useRef(draw)
  useLayoutEffect(() => {
    latest.current = draw
  })
  useLayoutEffect(() => {
    const picture = latest.current(width)
    // The page's policy lets no style sheet into a drawing; its few rules stand in asking.css.
    picture.querySelector('style')?.remove()
    picture.setAttribute('aria-hidden', 'true')
    frame.current?.replaceChildren(picture)
  }, [of, width])
  return <div ref={frame} className="curve-frame" role="img" aria-label={description} />
}
