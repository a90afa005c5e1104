/**
 * Has the browser keep the pages for when the bench is out of reach. Browsers allow that on this very machine and over a secure connection;
 * elsewhere a page that is open still keeps its notes, and only opening it again needs the bench.
 */
export const keepPages = (): void => {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return
  void navigator.serviceWorker.register('/service.js').catch(() => undefined)
}
