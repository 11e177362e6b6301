import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { answerText } from '../../src/core/agreement/answerText.ts'
import { makeSigningKey, signText } from '../../src/core/agreement/signing.ts'
import { writeJob } from '../../src/core/formats/job/writeJob.ts'
import type { Job } from '../../src/core/job/job.ts'
import { answerFile, PACK_ID, packAnswer } from '../support/sampleAnswerFile.ts'
import { cueId, sampleJob } from '../support/sampleJob.ts'
import { MAIN, reelwright as withArguments } from './reelwright.ts'

const reelwright = (...args: readonly string[]) => withArguments(args)

let folder = ''
let job: Job
let key: NonNullable<Awaited<ReturnType<typeof makeSigningKey>>>

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'reelwright-agreement-'))
  const made = await makeSigningKey()
  if (!made) throw new Error('nothing can be signed here')
  key = made
  const { algorithm, publicKey } = made
  const pack = { id: PACK_ID, madeAt: '2026-11-27T09:00:00Z', madeFor: 'Ines', cues: 4 }
  job = {
    ...sampleJob(),
    packs: { [PACK_ID]: { ...pack, key: { algorithm, publicKey } } },
  }
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const put = (name: string, text: string): string => {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}

const signed = async (n: number, change: Parameters<typeof packAnswer>[2] = {}) => {
  const plain = packAnswer(job, cueId(n), change)
  const text = answerText(cueId(n), plain)
  const signature = text.ok ? ((await signText(key, text.value)) ?? null) : null
  return { cue: cueId(n), answer: { ...plain, signature } }
}

const all = async (change: Parameters<typeof packAnswer>[2] = {}) =>
  JSON.stringify(answerFile(await Promise.all([1, 2, 3, 4].map((n) => signed(n, change)))))

test('answers are taken in, and the job then tells that every cue is agreed', async () => {
  const path = put('job.json', writeJob(job))
  expect((await reelwright('agreed', path)).status).toBe(1)
  const answer = put('answer.json', await all())
  const dry = await reelwright('answer', answer, '--into', path, '--dry-run')
  expect(dry.out).toContain('Ines agrees: cue 1; signature right.')
  expect(readFileSync(path, 'utf8')).toBe(writeJob(job))
  expect((await reelwright('answer', answer, '--into', path)).status).toBe(0)
  const agreed = await reelwright('agreed', path)
  expect(agreed.status).toBe(0)
  expect(agreed.out).toContain('4 of 4 cues are agreed as they are.')
  const told = JSON.parse((await reelwright('agreed', path, '--json')).out)
  expect(told.cues[0]).toMatchObject({ standing: 'agreed', by: 'Ines', signature: 'right' })
  expect((await reelwright('answer', answer, '--into', path)).out).toContain('taken already')
})

test('the answer is read from a mail as well', async () => {
  const path = put('mailed.json', writeJob(job))
  const mail = `Dear all,\n\n${JSON.stringify(JSON.parse(await all()), null, 1).replace(/^/gmu, '> ')}\n> \nregards\n`
  const args = [MAIN, 'answer', '-', '--into', path]
  expect(String(execFileSync(process.execPath, args, { input: mail }))).toContain('Wrote')
  expect((await reelwright('agreed', path)).status).toBe(0)
})

test('what was changed since is told with its numbers, and is not agreed', async () => {
  const path = put('changed.json', writeJob(job))
  const answer = put('changed-answer.json', await all())
  await reelwright('answer', answer, '--into', path)
  const text = readFileSync(path, 'utf8')
  const file = JSON.parse(text)
  file.cues[1].grade.saturation = 0.8
  writeFileSync(path, JSON.stringify(file))
  const { status, out } = await reelwright('agreed', path)
  expect(status).toBe(1)
  expect(out).toContain('changed since; Ines')
  expect(out).toContain('since then: saturation from 1 to 0.8')
})

test('reviewers who differ need a choice, and nothing is written without one', async () => {
  const path = put('two.json', writeJob(job))
  const one = put('one.json', await all())
  const two = put('two-answer.json', await all({ says: 'asked', by: 'Joren', note: 'Too dark.' }))
  const refused = await reelwright('answer', one, two, '--into', path)
  expect(refused.status).toBe(1)
  expect(refused.out).toContain('Not of one mind about cue 3: ')
  expect(readFileSync(path, 'utf8')).toBe(writeJob(job))
  expect((await reelwright('answer', one, two, '--into', path, '--prefer', 'Joren')).status).toBe(0)
  expect((await reelwright('agreed', path)).out).toContain('changes asked; Joren')
})

test('an answer that was changed after it was signed is told and not taken', async () => {
  const path = put('forged.json', writeJob(job))
  const forged = JSON.parse(await all({ says: 'asked' }))
  forged.answers[2].answer.says = 'agreed'
  const { status, out } = await reelwright(
    'answer',
    put('forged-answer.json', JSON.stringify(forged)),
    '--into',
    path,
  )
  expect(status).toBe(1)
  expect(out).toContain('a signature is wrong')
  expect(readFileSync(path, 'utf8')).toBe(writeJob(job))
})

test('an answer edited in the job itself does not count as agreed', async () => {
  const path = put('edited.json', writeJob(job))
  await reelwright('answer', put('edited-answer.json', await all()), '--into', path)
  const file = JSON.parse(readFileSync(path, 'utf8'))
  file.cues[0].grade.saturation = 0.5
  file.cues[0].answers[0].look.grade.saturation = 0.5
  writeFileSync(path, JSON.stringify(file))
  const { status, out } = await reelwright('agreed', path)
  expect(status).toBe(1)
  expect(out).toContain('the checksum is not that of the pictures it holds')
})

test.each([
  ['no answer', '{"format":"reelwright-job"}', 'no answer of a review pack'],
  ['not JSON', 'agreed, all of it', 'copy all of it'],
  ['another job', undefined, 'of the job “Lighthouse”'],
])('%s is refused', async (_, text, says) => {
  const path = put('refused.json', writeJob(job))
  const foreign = async () => {
    const file = JSON.parse(await all({ pack: 'pack-9' as never }))
    return JSON.stringify({
      ...file,
      ...{ pack: 'pack-9', title: 'Lighthouse', reel: { id: 'reel-9', name: 'Lighthouse 2' } },
    })
  }
  const answer = put('refused-answer.json', text ?? (await foreign()))
  const { status, error } = await reelwright('answer', answer, '--into', path)
  expect(status).toBe(3)
  expect(error).toContain(says)
})
