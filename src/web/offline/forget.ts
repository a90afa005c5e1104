/** As the service worker names it, which is built as one file and can share none with the pages. */
export const keptAnswersName = 'thrum-answers'

/** Has this browser forget every answer of the bench that it kept; the pages themselves stay. */
export const forgetAnswers = async (): Promise<void> => {
  if ('caches' in window) await window.caches.delete(keptAnswersName)
}
