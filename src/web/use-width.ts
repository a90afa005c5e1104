import { useEffect, useState, type RefObject } from 'react'

/** Until the box has been measured. */
const narrowPx = 320

/** The width of a box on the page, px, as it is now. */
export const useWidth = (frame: RefObject<HTMLElement | null>): number => {
  const [width, setWidth] = useState(narrowPx)
  useEffect(() => {
    const element = frame.current
    if (element === null) return
    const observer = new ResizeObserver(() => setWidth(element.clientWidth))
    observer.observe(element)
    setWidth(element.clientWidth)
    return () => observer.disconnect()
  }, [frame])
  return width
}
