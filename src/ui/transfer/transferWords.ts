import type { ChecklistStanding } from '../../core/transfer/checklist.ts'
import type { FindingStanding, PassCheck } from '../../core/transfer/passRecord.ts'
import type { Limiting, OnDamage } from '../../core/transfer/transferSettings.ts'

export const CHECKLIST_SIGNS: Readonly<Record<ChecklistStanding, string>> = {
  right: '●',
  wrong: '▲',
  'not known': '◌',
}

/** What is looked at in what was written. */
export const FINDING_TITLES: Readonly<Record<PassCheck, string>> = {
  frames: 'Frames',
  cues: 'Cues',
  tolerance: 'Tolerance',
  limiting: 'Limiting',
  flashes: 'Flashes',
  tags: 'Tags',
  duration: 'Duration',
  sound: 'Sound',
  checksum: 'Checksum',
}

export const FINDING_SIGNS: Readonly<Record<FindingStanding, string>> = {
  right: '●',
  wrong: '▲',
  told: '○',
  'not known': '◌',
}

export const LIMITING_TITLES: Readonly<Record<Limiting, string>> = {
  none: 'none',
  soft: 'soft',
  hard: 'hard',
}

export const LIMITING_WORDS: Readonly<Record<Limiting, string>> = {
  none: 'Levels go out as they are graded.',
  soft: 'Levels bend over the last tenth before each limit: highlights keep some shape, but levels just inside move too. What is changed is counted.',
  hard: 'Levels past a limit are clipped there and others left alone. What is changed is counted.',
}

export const DAMAGE_TITLES: Readonly<Record<OnDamage, string>> = {
  stop: 'stop at it, by name',
  hold: 'show the frame before it, and list it',
}
