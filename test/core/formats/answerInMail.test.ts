import { expect, it } from 'vitest'
import { answerInMail } from '../../../src/core/formats/answer/answerInMail.ts'
import { readAnswerFile } from '../../../src/core/formats/answer/readAnswerFile.ts'
import { answerFile, packAnswer } from '../../support/sampleAnswerFile.ts'
import { cueId, sampleJob } from '../../support/sampleJob.ts'

const note = 'Too {warm}\n> "here" \\'
const FILE = answerFile([
  { cue: cueId(1), answer: packAnswer(sampleJob(), cueId(1), { says: 'asked', note }) },
])
const TEXT = JSON.stringify(FILE, null, 2)
const TURNED = JSON.stringify(Object.fromEntries(Object.entries(FILE).reverse()))

it.each([
  ['with a byte order mark', `\ufeff${TEXT}`],
  ['with Windows line ends', TEXT.replaceAll('\n', '\r\n')],
  ['with braces in the words around it', `Dear {all},\n\n${TEXT}\n\nInes {Vall}`],
  ['with a farewell', `${TEXT}\n\nSent {from} the train`],
  ['with its names in another order', `So {be} it:\n${TURNED}\nInes`],
  ['after other records', `{"a": 1} and {"b": {}} and {c:\n${TEXT}`],
  ['quoted twice, with braces', `Ines {Vall} wrote:\n${TEXT}`.replace(/^/gmu, '>> ')],
])('an answer is found %s', (_, mail) => {
  expect(readAnswerFile(mail)).toEqual({ ok: true, value: FILE })
})

it('finds nothing in braces without end, and does not take long', () => {
  const began = performance.now()
  expect(answerInMail(`${'{"'.repeat(1_000_000)}"reelwright-answer"`)).toBeUndefined()
  expect(performance.now() - began).toBeLessThan(10_000)
})
