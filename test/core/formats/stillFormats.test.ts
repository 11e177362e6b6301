import { expect, it } from 'vitest'
import { stillFileName } from '../../../src/core/formats/stillFileName.ts'
import { stillFormatOf } from '../../../src/core/formats/stillFormats.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { rate } from '../../../src/core/time/rate.ts'
import { sampleReel } from '../../support/sampleJob.ts'

it('a name’s extension tells the kind of file, however it is written', () => {
  expect(['a.png', 'b.TIF', 'c.tiff', 'd.x.dpx'].map(stillFormatOf)).toEqual([
    'png',
    'tiff',
    'tiff',
    'dpx',
  ])
  expect(['a.jpg', 'png', 'a.png.txt', ''].map(stillFormatOf)).toEqual(Array(4).fill(undefined))
})

it('a file’s name has nothing in it that a file system refuses', () => {
  const reel = sampleReel({
    name: 'Ébène / part “2”',
    rate: rate(30_000, 1001),
    isDropFrame: true,
    startCount: 0,
  })
  const name = stillFileName(reel, 12, frame(1800), 'graded', 'png')
  expect(name).toBe('Ebene-part-2-cue-0012-00-01-00-02-graded.png')
})
