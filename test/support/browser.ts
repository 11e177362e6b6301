/** Flags that keep a test browser quiet and off the network. */
export const BROWSER_ARGS = [
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
] as const
