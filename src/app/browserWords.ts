/** What browsers call themselves in their identifying line (RFC 9110 §10.1.5), and their names. */
const NAMES = [
  ['Edg', 'Edge'],
  ['Firefox', 'Firefox'],
  ['HeadlessChrome', 'Chromium'],
  ['Chrome', 'Chromium'],
  ['Version', 'Safari'],
] as const

/** The browser and its version from its identifying line; 'a browser' where it does not say. */
export const browserWords = (userAgent: string): string => {
  for (const [token, name] of NAMES) {
    const version = new RegExp(`(?:^|[\\s(])${token}/(\\d+)`, 'u').exec(userAgent)?.[1]
    if (version !== undefined) return `${name} ${version}`
  }
  return 'a browser'
}
