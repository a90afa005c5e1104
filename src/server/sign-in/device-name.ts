const kinds: readonly (readonly [RegExp, string])[] = [
  [/\biPhone\b/, 'iPhone'],
  [/\biPad\b/, 'iPad'],
  [/\bAndroid\b.*\bMobile\b/, 'phone with Android'],
  [/\bAndroid\b/, 'tablet with Android'],
  [/\bWindows\b/, 'computer with Windows'],
  [/\bMac OS X\b/, 'computer with macOS'],
  [/\bCrOS\b/, 'computer with ChromeOS'],
  [/\bLinux\b/, 'computer with Linux'],
]

/** What a browser says it runs on, so that devices on a list can be told apart; never the whole of what it says. */
export const deviceName = (userAgent: string): string => {
  const text = userAgent.slice(0, 300)
  return kinds.find(([sign]) => sign.test(text))?.[1] ?? 'device that does not say what it is'
}
