import { useEffect, useState } from 'react'

const everyMs = 30_000

/** Now as ISO 8601, told anew twice a minute and when the page comes back into sight. */
export const useNow = (): string => {
  const [now, setNow] = useState(() => new Date().toISOString())
  useEffect(() => {
    const tell = (): void => setNow(new Date().toISOString())
    const timer = window.setInterval(tell, everyMs)
    document.addEventListener('visibilitychange', tell)
    return () => {
      window.clearInterval(timer)
      document.removeEventListener('visibilitychange', tell)
    }
  }, [])
  return now
}
