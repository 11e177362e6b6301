// Makes the small clips of test/media/numbered/ with ffmpeg (x264, libvpx, libaom, prores, ffv1).
// Each picture carries its own number as sixteen columns, the highest bit first: bright is 1.
// Run: node test/media/make-numbered-clips.mjs
import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'

const out = resolve(import.meta.dirname, 'numbered')
const temporary = mkdtempSync(join(tmpdir(), 'numbered-'))
mkdirSync(out, { recursive: true })

const DEPTH = { yuv420p: 8, yuv422p: 8, yuv444p: 8, yuvj444p: 8, gbrp: 8, gray: 8, gray16le: 16 }
const depthOf = (format) => DEPTH[format] ?? Number(/(\d+)le$/.exec(format)[1])

/** One raw picture: the number above, a slope that moves by two a picture below, mild chroma. */
const numbered = (number, width, height, format) => {
  const depth = depthOf(format)
  const scale = 2 ** (depth - 8)
  const column = Math.floor(width / 16)
  const planes = [new Float64Array(width * height)]
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const bit = Math.min(15, Math.floor(x / column))
      const bar = (number >> (15 - bit)) & 1 ? 200 : 40
      const slope = 40 + ((x + 2 * number) % 128)
      planes[0][y * width + x] = y < height / 2 ? bar : slope
    }
  // Raw planes of this format are G, B, R: the number goes into R.
  if (format.startsWith('gbrp')) planes.unshift(planes[0].map(() => 100), planes[0].map(() => 60))
  else if (!format.startsWith('gray')) {
    const columns = format.includes('444') ? width : (width + 1) >> 1
    const rows = format.includes('420') ? (height + 1) >> 1 : height
    planes.push(new Float64Array(columns * rows).fill(118), new Float64Array(columns * rows).fill(140))
  }
  return packed(planes, depth, scale)
}

/** Every code value of luma along the row; Cb rises down the picture, Cr falls. */
const ramp = (number, width, height, format) => {
  const depth = depthOf(format)
  const top = 2 ** depth - 1
  const step = (x) => Math.round((x * top) / (width - 1))
  const plane = (value) => {
    const samples = new Float64Array(width * height)
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++) samples[y * width + x] = value(x, y)
    return samples
  }
  return packed(
    [
      plane((x) => step((x + number) % width)),
      plane((_, y) => Math.round((y * top) / (height - 1))),
      plane((_, y) => top - Math.round((y * top) / (height - 1))),
    ],
    depth,
    1,
  )
}

/** Every luma code along each row, every chroma code along it at half the steps. */
const ramp422 = (_, width, height) => {
  const rows = (columns, value) =>
    Float64Array.from({ length: columns * height }, (_, i) => value(i % columns))
  return packed(
    [
      rows(width, (x) => x),
      rows(width / 2, (x) => 2 * x),
      rows(width / 2, (x) => 255 - 2 * x),
    ],
    8,
    1,
  )
}

const packed = (planes, depth, scale) => {
  const count = planes.reduce((sum, plane) => sum + plane.length, 0)
  const samples = depth > 8 ? new Uint16Array(count) : new Uint8Array(count)
  let at = 0
  for (const plane of planes) for (const value of plane) samples[at++] = Math.round(value * scale)
  return Buffer.from(samples.buffer)
}

const ffmpeg = (args, input) =>
  execFileSync('ffmpeg', ['-v', 'error', '-y', ...args], {
    input,
    stdio: ['pipe', 'inherit', 'inherit'],
    maxBuffer: 2 ** 30,
  })

const make = (name, encoding, options = {}) => {
  const { width = 128, height = 96, format = 'yuv420p', rate = '25', frames = 60 } = options
  const { draw = numbered, folder = out } = options
  const raw = Buffer.concat(
    Array.from({ length: frames }, (_, n) => draw(n, width, height, format)),
  )
  const path = join(folder, name)
  ffmpeg(
    [
      ...['-f', 'rawvideo', '-pix_fmt', format, '-video_size', `${width}x${height}`],
      ...['-framerate', rate, '-i', 'pipe:0'],
      ...['-fflags', '+bitexact', '-flags:v', '+bitexact', '-map_metadata', '-1'],
      ...encoding.split(' '),
      path,
    ],
    raw,
  )
  return path
}

const tags = (space, range = 'tv', primaries = space, transfer = primaries) =>
  `-colorspace ${space} -color_range ${range} -color_primaries ${primaries} -color_trc ${transfer}`
const X264 = '-c:v libx264 -threads 1 -crf 26 -g 24 -bf 3'

make('h264-bframes-24.mp4', `${X264} ${tags('bt709')} -movflags +faststart`, { rate: '24' })
make('h264-fragmented-25.mp4', `${X264} -movflags +frag_keyframe+empty_moov`)
make('h264-2398.mov', X264, { rate: '24000/1001' })
make('h264-2997.mkv', `${X264} ${tags('smpte170m')} -vf setsar=3/4`, { rate: '30000/1001' })
make('h264-25.mpegts', `${X264} -f mpegts`)
make('h264-open-gop-25.mp4', '-c:v libx264 -threads 1 -crf 26 -x264-params open-gop=1:keyint=12:min-keyint=12:bframes=3:scenecut=0')
make('h264-high10-25.mp4', X264, { format: 'yuv420p10le' })
make('h264-422-10bit-25.mov', `${X264} ${tags('bt709')}`, { format: 'yuv422p10le' })
make('h264-cropped-full-25.mp4', `${X264} ${tags('bt709', 'pc')}`, { width: 136, height: 100 })
// Only in two passes does the encoder write packets that show nothing.
const VP8 = '-c:v libvpx -b:v 100k -g 30 -auto-alt-ref 1 -lag-in-frames 16 -arnr-maxframes 5'
const passes = join(temporary, 'vp8')
make('first-pass.webm', `${VP8} -pass 1 -passlogfile ${passes}`, { folder: temporary })
make('vp8-hidden-25.webm', `${VP8} -pass 2 -passlogfile ${passes}`)
make('vp9-10bit-25.webm', `-c:v libvpx-vp9 -crf 40 -b:v 0 -g 30 ${tags('bt2020nc', 'tv', 'bt2020', 'bt2020-10')}`, { format: 'yuv420p10le' })
make('vp9-odd-size-25.webm', '-c:v libvpx-vp9 -crf 40 -b:v 0 -g 30', { width: 131, height: 97 })
make('av1-24.mp4', '-c:v libaom-av1 -cpu-used 8 -crf 40 -g 30', { rate: '24' })
make('h264-rgb-25.mp4', '-c:v libx264rgb -threads 1 -crf 20 -g 24', { format: 'gbrp', frames: 12 })

// No browser decodes it, but a library does.
make('prores.mov', '-c:v prores_ks -profile:v 3', { width: 64, height: 48, format: 'yuv422p10le', frames: 2 })
make('prores-422-25.mov', '-c:v prores_ks -profile:v 3', { format: 'yuv422p10le', frames: 12 })
make('prores-4444-24.mov', '-c:v prores_ks -profile:v 4', { format: 'yuv444p10le', rate: '24', frames: 6 })

// Lossless, so that every code value can be compared.
make('ramp-8bit.webm', '-c:v libvpx-vp9 -lossless 1 -pix_fmt yuv444p', { width: 256, height: 64, format: 'yuv444p', frames: 3, draw: ramp })
make('ramp-10bit.mp4', '-c:v libx264 -threads 1 -qp 0 -pix_fmt yuv444p10le', { width: 1024, height: 16, format: 'yuv444p10le', frames: 2, draw: ramp })
make('ramp-full-range.mp4', `-c:v libx264 -threads 1 -qp 0 ${tags('bt709', 'pc')}`, { width: 256, height: 64, format: 'yuvj444p', frames: 2, draw: ramp })

// What no browser decodes.
make('mpeg2.mpegts', '-c:v mpeg2video -q:v 8 -f mpegts', { frames: 6 })
make('mpeg2.mxf', '-c:v mpeg2video -q:v 8', { frames: 6 })
make('ffv1-grey16.mkv', '-c:v ffv1 -level 3', { format: 'gray16le', frames: 6 })

// Samples that ffmpeg must rearrange, with a stated full range it must not rescale.
make('uncompressed-full.mkv', `-c:v rawvideo -pix_fmt uyvy422 -allow_raw_vfw 1 ${tags('bt709', 'pc')}`, { width: 256, height: 16, format: 'yuv422p', frames: 1, draw: ramp422 })

// Packets copied: cut in the middle of a group of pictures (an edit list hides what comes before
// the cut), unevenly spaced, pairs under one time stamp, and to be shown turned by 90 degrees.
const copy = (name, from, before, after) =>
  ffmpeg([...before, '-i', join(out, from), '-c', 'copy', ...after, join(out, name)])
const later = (stamp) => `${stamp}+if(mod(floor(${stamp}/40+0.5),2),20,0)`
copy('h264-edit-list.mp4', 'h264-bframes-24.mp4', ['-ss', '0.4'], [])
copy('h264-uneven.mkv', 'h264-25.mpegts', [], ['-bsf:v', `setts=pts='${later('PTS')}':dts='${later('DTS')}'`])
copy('vp9-doubled-stamps.mkv', 'vp9-10bit-25.webm', [], ['-bsf:v', "setts=ts='floor(N/2)*2*40'"])
copy('h264-turned.mp4', 'h264-rgb-25.mp4', [], ['-metadata:s:v:0', 'rotate=90'])

// An edit list that ends early, and one of two stretches: made by hand from one over all.
const edited = (name, edits) => {
  const bytes = readFileSync(join(out, 'h264-bframes-24.mp4'))
  const elst = bytes.indexOf('elst')
  if (edits.length === 1) bytes.writeUInt32BE(edits[0][0], elst + 12)
  else {
    // The box grows into `udta`, which is made `free` and shorter, so that no offset changes.
    const trak = bytes.indexOf('trak')
    const udta = bytes.indexOf('udta')
    const body = bytes.subarray(elst - 4 + 28, udta - 4)
    const left = bytes.readUInt32BE(udta - 4) - 12
    const entry = Buffer.alloc(12)
    bytes.copyWithin(elst - 4 + 40, elst - 4 + 28, elst - 4 + 28 + body.length)
    edits.forEach(([duration, from], i) => {
      entry.writeUInt32BE(duration, 0)
      entry.writeInt32BE(from, 4)
      entry.writeUInt32BE(0x10000, 8)
      entry.copy(bytes, elst + 12 + 12 * i)
    })
    bytes.writeUInt32BE(edits.length, elst + 8)
    for (const box of [elst, bytes.indexOf('edts'), trak])
      bytes.writeUInt32BE(bytes.readUInt32BE(box - 4) + 12, box - 4)
    bytes.writeUInt32BE(left, udta + 8)
    bytes.write('free', udta + 12, 'latin1')
  }
  writeFileSync(join(out, name), bytes)
}
edited('h264-ends-early.mp4', [[1500, 1024]])
edited('h264-two-stretches.mp4', [
  [500, 1024],
  [1000, 1024 + 512 * 30],
])

// Numbered pictures, 86 to 90, that each carry the number in their name.
const PICTURES = [
  ['png8', 'png', 'rgb24', ''],
  ['png16', 'png', 'rgb48be', ''],
  ['tiff8', 'tif', 'rgb24', '-compression_algo lzw'],
  ['tiff16', 'tif', 'rgb48le', '-compression_algo deflate'],
]
for (const [name, extension, pixels, more] of PICTURES) {
  const folder = join(out, name)
  mkdirSync(folder, { recursive: true })
  make(`reel_%04d.${extension}`, `-f image2 -start_number 86 -pix_fmt ${pixels} ${more}`.trim(), {
    width: 64,
    height: 48,
    format: pixels.startsWith('rgb48') ? 'gbrp16le' : 'gbrp',
    frames: 5,
    folder,
    draw: (n, ...rest) => numbered(n + 86, ...rest),
  })
}

rmSync(temporary, { recursive: true })
let total = 0
for (const name of readdirSync(out)) {
  const { size } = statSync(join(out, name))
  total += size
  console.log(`${String(size).padStart(8)}  ${name}`)
}
console.log(`${String(total).padStart(8)}  in all`)
