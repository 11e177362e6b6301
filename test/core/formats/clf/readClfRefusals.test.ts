import { describe, expect, it } from 'vitest'
import {
  array,
  cdl,
  DEPTHS,
  IDENTITY,
  list,
  operator,
  refusals,
  SOP,
  zeros,
} from '../../../support/clfTexts.ts'

describe('what cannot be carried is refused by its name, with its line', () => {
  it.each<[string, string, RegExp, number]>([
    ['no operator', list(''), /no operator/u, 2],
    ['unknown operators', list(`<B/>${IDENTITY}`), /^B is no operator/u, 3],
    ['an unknown depth', list(IDENTITY.replace('32f', '14i')), /inBitDepth “14i”/u, 3],
    ['a missing depth', list(IDENTITY.replace('outBitDepth="32f"', '')), /no outBitDepth/u, 3],
    ['an unknown attribute', list(IDENTITY.replace('Matrix ', 'Matrix bypass="1" ')), /bypass/u, 3],
    ['an unknown style', cdl(SOP, 'style="Forward"'), /style “Forward”/u, 3],
    ['a slope below 0', cdl(SOP.replace('1 1 1', '1 -1 1')), /green slope -1/u, 4],
    ['power 0', cdl(SOP.replace('<Power>1', '<Power>0')), /red power 0/u, 4],
    ['no offset', cdl(SOP.replace('<Offset>0 0 0</Offset>', '')), /no Offset/u, 4],
    ['no saturation', cdl('<SatNode/>'), /no Saturation/u, 4],
    ['two nodes', cdl(`${SOP}\n${SOP}`), /SOPNode stands in ASC_CDL twice/u, 5],
    ['a flat reverse', cdl(SOP.replace('1 1 1', '1 0 1'), 'style="Rev"'), /Slope is 0/u, 4],
    [
      'a cube past all size',
      operator('LUT3D', DEPTHS, array('1000000000 1000000000 1000000000 3', '0')),
      /has 1000000000 places along an edge; 2 to 65/u,
      4,
    ],
    [
      'a cube past all numbers',
      operator('LUT3D', DEPTHS, array(`${`${'9'.repeat(400)} `.repeat(3)}3`, '0')),
      /has far too many places along an edge/u,
      4,
    ],
    ['an uneven cube', operator('LUT3D', DEPTHS, array('9999999 2 2 3', '0')), /alike/u, 4],
    ['other nodes', cdl('<ASC_SAT>1</ASC_SAT>'), /ASC_SAT in ASC_CDL/u, 4],
    ['a matrix of two rows', operator('Matrix', DEPTHS, array('2 3', zeros(6))), /dim/u, 4],
    ['a matrix too short', operator('Matrix', DEPTHS, array('3 3', zeros(8))), /it has 8/u, 4],
    ['a matrix too long', operator('Matrix', DEPTHS, array('3 3', zeros(10))), /more begin/u, 4],
    ['no array', operator('Matrix', DEPTHS, ''), /Matrix has no Array/u, 3],
    ['words', operator('Matrix', DEPTHS, array('3 3', '0 0 0\n0 x 0\n0 0 0')), /“x” is not/u, 5],
    ['huge numbers', operator('Matrix', DEPTHS, array('3 3', `1e9 ${zeros(8)}`)), /past ±/u, 3],
    [
      'numbers past any',
      operator('Matrix', DEPTHS, array('3 3', `1e999 ${zeros(8)}`)),
      /1e999/u,
      4,
    ],
    [
      'a cubic curve',
      operator('LUT1D', `${DEPTHS} interpolation="cubic"`, array('2 1', '0 1')),
      /cubic/u,
      3,
    ],
    [
      'half floats',
      operator('LUT1D', `${DEPTHS} halfDomain="true"`, array('2 1', '0 1')),
      /halfDomain/u,
      3,
    ],
    [
      'raw halfs',
      operator('LUT1D', `${DEPTHS} rawHalfs="true"`, array('2 1', '0 1')),
      /rawHalfs/u,
      3,
    ],
    ['a curve of two', operator('LUT1D', DEPTHS, array('2 2', '0 1 0 1')), /“N 1” or “N 3”/u, 4],
    ['one place', operator('LUT1D', DEPTHS, array('1 1', '0')), /1 places/u, 4],
    ['too many places', operator('LUT1D', DEPTHS, array('65537 1', '0')), /65537 places/u, 4],
    ['no dim', operator('LUT1D', DEPTHS, '<Array>0 1</Array>'), /dim/u, 4],
    ['a box', operator('LUT3D', DEPTHS, array('2 3 2 3', zeros(36))), /alike/u, 4],
    ['too large a cube', operator('LUT3D', DEPTHS, array('66 66 66 3', '0')), /66 places/u, 4],
    [
      'an index map',
      operator('LUT3D', DEPTHS, `${array('2 2 2 3', zeros(24))}<IndexMap/>`),
      /IndexMap/u,
      4,
    ],
    [
      'other interpolation',
      operator('LUT3D', `${DEPTHS} interpolation="x"`, array('2 2 2 3', zeros(24))),
      /known are tri/u,
      3,
    ],
    ['an empty range', operator('Range', DEPTHS, ''), /no limit/u, 3],
    ['half an end', operator('Range', DEPTHS, '<minInValue>0</minInValue>'), /stands alone/u, 4],
    [
      'an end moved',
      operator('Range', DEPTHS, '<minInValue>0</minInValue><minOutValue>.1</minOutValue>'),
      /same level/u,
      3,
    ],
    [
      'a lone end without clamp',
      operator(
        'Range',
        `${DEPTHS} style="noClamp"`,
        '<minInValue>0</minInValue><minOutValue>0</minOutValue>',
      ),
      /both of its ends/u,
      3,
    ],
    [
      'a range from nowhere',
      operator(
        'Range',
        DEPTHS,
        '<minInValue>1</minInValue><minOutValue>0</minOutValue><maxInValue>1</maxInValue><maxOutValue>1</maxOutValue>',
      ),
      /not above its minInValue/u,
      3,
    ],
    [
      'a range turned over',
      operator(
        'Range',
        DEPTHS,
        '<minInValue>0</minInValue><minOutValue>1</minOutValue><maxInValue>1</maxInValue><maxOutValue>0</maxOutValue>',
      ),
      /below its minOutValue/u,
      3,
    ],
    ['too many steps', list(IDENTITY.repeat(33)), /1 to 32 steps/u, 2],
    ['other XML', '<html/>', /not a process list/u, 1],
    ['a document type', '<!DOCTYPE ProcessList>\n<ProcessList/>', /document type/u, 1],
    ['nothing', '', /.*/u, 1],
  ])('%s', (_, text, says, line) => {
    expect(refusals(text)[0]).toEqual([expect.stringMatching(says), line])
  })

  it('neighbours of unlike bit depths', () => {
    const text = list(`${IDENTITY}\n${IDENTITY.replace('32f', '10i')}`)
    expect(refusals(text)).toEqual([[expect.stringContaining('the outBitDepth 32f'), 4]])
  })

  it('all at once, in the order of the operators', () => {
    const text = list(
      `<Log ${DEPTHS}/>\n<Exponent ${DEPTHS}/>\n${IDENTITY.replace('0 1 0', '0 one 0')}`,
    )
    expect(refusals(text).map(([, line]) => line)).toEqual([3, 4, 5])
  })
})
