/**
 * What a strict reader of conventional event lines finds in a list of ours; throws on anything
 * odd. Limits: facts/edl.md §1–2 (events 001–999, reels of up to 8 of A–Z 0–9 _, titles of up to
 * 70 characters, record times without a gap, 7-bit ASCII, CR LF), 80 columns (common practice, no
 * published source) but for ASC_SOP and words of other lists; the ranges of ASC CDL v1.2.
 */
export type EventLine = {
  readonly event: number
  readonly reel: string
  readonly times: readonly [string, string, string, string]
  readonly sop: readonly number[]
  readonly sat: number
  readonly comments: readonly string[]
}

const EVENT = /^(\d{3}) {2}([A-Z0-9_]{1,8}) +V {5}C {8}((?:\d\d:\d\d:\d\d:\d\d ?){4})$/u
const DECIMAL = String.raw`-?\d+\.\d{1,6}`
const SOP = new RegExp(String.raw`^\* ASC_SOP ((?:\(${DECIMAL} ${DECIMAL} ${DECIMAL}\)){3})$`, 'u')
const SAT = new RegExp(String.raw`^\* ASC_SAT (${DECIMAL})$`, 'u')
const MAY_BE_LONG = /^\* (ASC_SOP|FROM EVENT|FROM LIST|COMMENT|SOURCE FILE|X )/u

const check = (isSo: boolean, says: string): void => {
  if (!isSo) throw new Error(says)
}

export const readEventLines = (text: string): readonly EventLine[] => {
  check(!/[^\r\n\u0020-\u007e]/u.test(text), 'not 7-bit ASCII')
  check(text.endsWith('\r\n'), 'the last line does not end in CR LF')
  const lines = text.slice(0, -2).split('\r\n')
  check(!/[\r\n]/u.test(lines.join('')), 'a line end that is not CR LF')
  check(/^TITLE: .{1,70}$/u.test(lines[0] ?? ''), 'no title, or too long a one')
  const events: (EventLine & { sop: number[]; sat: number; comments: string[] })[] = []
  for (const line of lines.slice(1)) {
    check(line.length <= 80 || MAY_BE_LONG.test(line), `longer than 80 columns: ${line}`)
    check(line === line.trimEnd(), `blanks at the end: ${line}`)
    const event = EVENT.exec(line)
    const last = events.at(-1)
    const sop = SOP.exec(line)
    const sat = SAT.exec(line)
    if (event) {
      const times = (event[3] ?? '').trim().split(' ') as [string, string, string, string]
      check(times[0] === times[2] && times[1] === times[3], `source is not record: ${line}`)
      check(line.indexOf(times[0]) === 29, `times do not begin in column 30: ${line}`)
      check(Number(event[1]) === events.length + 1, `not the next event: ${line}`)
      check(!last || last.times[3] === times[2], `a gap before ${line}`)
      check(!last || last.reel === event[2], `another reel: ${line}`)
      events.push({
        event: Number(event[1]),
        reel: event[2] ?? '',
        times,
        sop: [],
        sat: Number.NaN,
        comments: [],
      })
    } else if (sop && last) {
      check(last.sop.length === 0, 'a second ASC_SOP')
      last.sop.push(...((sop[1] ?? '').match(/-?\d+\.\d+/gu)?.map(Number) ?? []))
      check(
        last.sop.slice(0, 3).every((slope) => slope >= 0),
        `a slope below 0: ${line}`,
      )
      check(
        last.sop.slice(6).every((power) => power > 0),
        `a power not above 0: ${line}`,
      )
    } else if (sat && last) {
      check(Number.isNaN(last.sat), 'a second ASC_SAT')
      last.sat = Number(sat[1])
      check(last.sat >= 0, `a saturation below 0: ${line}`)
    } else if (line.startsWith('* ')) {
      check(!/^\* ASC_/u.test(line), `a broken grade: ${line}`)
      last?.comments.push(line.slice(2))
    } else
      check(
        !last && (line === '' || /^FCM: (NON-)?DROP FRAME$/u.test(line)),
        `not a line of a conventional list: ${line}`,
      )
  }
  return events
}
