import { LIST_FUNCTIONS } from './listShader.ts'

/** Every pass draws one triangle that covers the target. */
export const COVER_VERTEX = `#version 300 es
void main() {
  vec2 corner = vec2(float((gl_VertexID << 1) & 2), float(gl_VertexID & 2));
  gl_Position = vec4(corner * 2.0 - 1.0, 0.0, 1.0);
}`

/** The kinds of scan as the shaders know them. */
export const SCANS = { print: 0, 'printing-density': 1, negative: 2 } as const

/**
 * A fragment with some of its parts switched on: HAS_FILM the base before its list, LIST_STEPS the
 * list, HAS_TAPS several samples a pixel, TO_SRGB and TO_PRIMARIES what a display is sent. A branch at run time would cost its
 * whole arithmetic where graphics are drawn by software.
 */
export const withDefines = (fragment: string, defines: readonly string[]): string =>
  fragment.replace('\n', `\n${defines.map((name) => `#define ${name}\n`).join('')}`)

/** Where a fragment is in the area drawn to, in pixels from its top left. */
const AREA = `
uniform vec2 origin;       // lower left of the area
uniform vec2 targetSize;
uniform bool isUpright;    // rows run upwards, as they do on a canvas

vec2 placeInArea() {
  vec2 at = gl_FragCoord.xy - origin;
  return isUpright ? vec2(at.x, targetSize.y - at.y) : at;
}
`

/**
 * What a display is sent for a signal: core/colour/displaySignal.ts. Where primaries stay as they
 * are, light to the power 1/2.4 is the signal again, and only the toe of sRGB needs a power.
 */
const DISPLAY = `
#if defined(TO_SRGB)
vec3 displayed(vec3 signal) {
  vec3 x = clamp(signal, 0.0, 1.0);
  vec3 straight = 1.055 * x - 0.055;
  bvec3 isAbove = greaterThan(x, vec3(0.0904586));   // 0.0031308^(1/2.4)
  return all(isAbove) ? straight : mix(12.92 * pow(x, vec3(2.4)), straight, isAbove);
}
#elif defined(TO_PRIMARIES)
uniform mat3 primaries;
vec3 displayed(vec3 signal) {
  vec3 light = clamp(primaries * pow(clamp(signal, 0.0, 1.0), vec3(2.4)), 0.0, 1.0);
  vec3 straight = 1.055 * pow(light, vec3(1.0 / 2.4)) - 0.055;
  return mix(12.92 * light, straight, greaterThan(light, vec3(0.0031308)));
}
#else
vec3 displayed(vec3 signal) { return signal; }
#endif
`

/** What both grading passes read: the planes, how they are coded, the base, and the grade. */
const PLANES = `#version 300 es
precision highp float;
precision highp int;
precision highp usampler2D;
uniform usampler2D first;
uniform usampler2D second;
uniform usampler2D third;
uniform ivec2 chromaSize;
uniform bvec2 isSubsampled;
uniform bool isRgb;
uniform vec2 lumaCodes;    // black, 1 / (peak - black)
uniform vec2 chromaCodes;  // zero, 1 / (2 * half)
uniform vec4 toRgb;        // crToR, cbToG, crToG, cbToB
uniform vec3 lift;
uniform vec3 gain;
uniform vec3 power;
uniform float saturation;
out vec4 colour;

float signal(usampler2D plane, ivec2 at) {
  return (float(texelFetch(plane, at, 0).r) - lumaCodes.x) * lumaCodes.y;
}

vec3 decoded(float y, vec2 chroma) {
  vec2 c = (chroma - chromaCodes.x) * chromaCodes.y;
  return y + vec3(toRgb.x * c.y, toRgb.y * c.x + toRgb.z * c.y, toRgb.w * c.x);
}

#ifdef HAS_FILM
uniform int scan;          // see SCANS
uniform vec3 clearDensity;
uniform vec3 filmGamma;
uniform mat3 dyes;

// The numbers are those of core/film/printDensity.ts and printingDensity.ts.
vec3 filmed(vec3 x) {
  vec3 density = dyes * (scan == ${SCANS['printing-density']}
    ? (1023.0 * x - 95.0) * 0.002
    : -2.4 * log2(max(x, 0.001)) / log2(10.0) - clearDensity);
  if (scan == ${SCANS.print}) return exp2(log2(10.0) * min(-density / 2.4, 1.0));
  float white = 590.0 / 300.0;
  float black = exp2(-log2(10.0) * white);
  vec3 exposed = exp2(log2(10.0) * (min(density / filmGamma, 4.0) - white));
  vec3 light = (exposed - black) / (1.0 - black);
  vec3 curved = 1.099 * pow(max(light, vec3(0.018)), vec3(0.45)) - 0.099;
  return mix(curved, 4.5 * light, lessThan(light, vec3(0.018)));
}
#else
vec3 filmed(vec3 x) { return x; }
#endif
${LIST_FUNCTIONS}
vec3 based(vec3 x) { return listed(filmed(x)); }

vec3 graded(vec3 x) {
  vec3 v = lift + (gain - lift) * x;
  vec3 curved = mix(v, min(pow(max(v, vec3(1e-30)), power), vec3(1073741824.0)), greaterThan(v, vec3(0.0)));
  float luma = dot(curved, vec3(0.2126, 0.7152, 0.0722));
  return luma + saturation * (curved - luma);
}
`

/** Lines over what leaves its limits: rising above them, falling below. */
const MARKS = `
uniform bool marks;
uniform vec4 limits;       // rgb low, rgb high, luma low, luma high
uniform vec2 compositeLimits;
uniform vec3 lumaWeights;

// Lowest and highest peak of the composite signal: core/tolerance/compositePeaks.ts.
vec2 compositePeaks(vec3 c) {
  float y = dot(c, vec3(0.299, 0.587, 0.114));
  float chroma = length(vec2(0.493 * (c.b - y), 0.877 * (c.r - y)));
  return vec2(y - chroma, y + chroma);
}

vec3 marked(vec3 shown, vec2 at) {
  if (!marks) return shown;
  float luma = dot(shown, lumaWeights);
  float low = min(shown.r, min(shown.g, shown.b));
  float high = max(shown.r, max(shown.g, shown.b));
  vec2 peaks = compositePeaks(shown);
  if (high > limits.y || luma > limits.w || peaks.y > compositeLimits.y)
    return vec3(mod(floor((at.x + at.y) / 3.0), 2.0));
  if (low < limits.x || luma < limits.z || peaks.x < compositeLimits.x)
    return vec3(0.75 * mod(floor((at.x - at.y) / 3.0), 2.0));
  return shown;
}
`

/**
 * File samples → graded R′G′B′, unclipped, one texel a scanned pixel: the stages of
 * core/picture/decodePlanes.ts, basePicture.ts and gradePicture.ts. Chroma is read at its siting.
 */
export const GRADE_FRAGMENT = `${PLANES}
float chromaAt(usampler2D plane, ivec2 at) {
  if (!isSubsampled.x) return float(texelFetch(plane, at, 0).r);
  vec2 place = vec2(float(at.x) * 0.5, isSubsampled.y ? float(at.y) * 0.5 - 0.25 : float(at.y));
  ivec2 low = ivec2(floor(place));
  vec2 part = place - vec2(low);
  ivec2 a = max(low, ivec2(0));
  ivec2 b = min(low + 1, chromaSize - 1);
  float topLeft = float(texelFetch(plane, a, 0).r);
  float topRight = float(texelFetch(plane, ivec2(b.x, a.y), 0).r);
  float bottomLeft = float(texelFetch(plane, ivec2(a.x, b.y), 0).r);
  float bottomRight = float(texelFetch(plane, b, 0).r);
  return mix(mix(topLeft, topRight, part.x), mix(bottomLeft, bottomRight, part.x), part.y);
}

void main() {
  ivec2 at = ivec2(gl_FragCoord.xy);
  float y = signal(first, at);
  vec3 x = isRgb
    ? vec3(y, signal(second, at), signal(third, at))
    : decoded(y, vec2(chromaAt(second, at), chromaAt(third, at)));
  colour = vec4(graded(based(x)), 1.0);
}`

/** Where a delivered place is on the scan (see core/picture/framing.ts), and whether it is black. */
const FRAMING = `
uniform mat3x2 framing;    // columns: of x, of y, and the offset
uniform vec4 open;         // left, top, right, bottom of what is not blanked

vec2 placeOf(vec2 delivered) {
  return framing * vec3(delivered, 1.0);
}

bool isBlack(vec2 delivered, vec2 place, vec2 size) {
  return any(lessThan(delivered, open.xy - 0.5)) || any(greaterThanEqual(delivered, open.zw - 0.5))
    || any(lessThan(place, vec2(-0.5))) || any(greaterThan(place, size - 0.5));
}`

/**
 * The same straight to the canvas, one scanned pixel read for each one shown (with HAS_TAPS, the
 * mean of several): for a picture that moves, where time counts more than how fine it is sampled,
 * and for small ones.
 */
export const DIRECT_FRAGMENT = `${PLANES}${MARKS}${AREA}${DISPLAY}
uniform vec2 pictureSize;
${FRAMING}
#ifdef HAS_TAPS
uniform int taps;
#endif

vec3 sampleAt(vec2 delivered) {
  vec2 place = placeOf(delivered);
  if (isBlack(delivered, place, pictureSize)) return vec3(0.0);
  ivec2 pixel = min(ivec2(place + 0.5), ivec2(pictureSize) - 1);
  float y = signal(first, pixel);
  ivec2 sited = min(ivec2(isSubsampled.x ? pixel.x / 2 : pixel.x, isSubsampled.y ? pixel.y / 2 : pixel.y), chromaSize - 1);
  return graded(based(isRgb
    ? vec3(y, signal(second, pixel), signal(third, pixel))
    : decoded(y, vec2(float(texelFetch(second, sited, 0).r), float(texelFetch(third, sited, 0).r)))));
}

void main() {
  vec2 at = placeInArea();
  vec2 size = pictureSize / targetSize;
#ifdef HAS_TAPS
  vec3 sum = vec3(0.0);
  for (int j = 0; j < taps; j++)
    for (int i = 0; i < taps; i++)
      sum += sampleAt((at - 0.5 + (vec2(i, j) + 0.5) / float(taps)) * size - 0.5);
  vec3 shown = sum / float(taps * taps);
#else
  vec3 shown = sampleAt(at * size - 0.5);
#endif
  colour = vec4(displayed(marked(shown, at)), 1.0);
}`

/**
 * Graded R′G′B′ → the delivered picture on the canvas: framed as core/picture/framePictureLinear.ts
 * does, from four pixels, as weak graphics need it; several samples a pixel where the canvas is
 * smaller than the picture; and hatching where levels leave their limits: rising lines above,
 * falling lines below. What is measured and written is framed by framePicture.ts, from sixteen
 * pixels or more: where it is enlarged it is sharper, and at hard edges it goes a little further.
 */
export const SHOW_FRAGMENT = `#version 300 es
precision highp float;
precision highp sampler2D;
uniform sampler2D graded;
uniform vec2 pictureSize;
${FRAMING}
uniform int taps;
out vec4 colour;
${MARKS}${AREA}${DISPLAY}

vec3 sampleAt(vec2 delivered) {
  vec2 place = placeOf(delivered);
  if (isBlack(delivered, place, pictureSize)) return vec3(0.0);
  ivec2 last = ivec2(pictureSize) - 1;
  ivec2 low = ivec2(floor(place));
  vec2 part = place - vec2(low);
  ivec2 a = max(low, ivec2(0));
  ivec2 b = min(low + 1, last);
  vec3 top = mix(texelFetch(graded, a, 0).rgb, texelFetch(graded, ivec2(b.x, a.y), 0).rgb, part.x);
  vec3 bottom = mix(texelFetch(graded, ivec2(a.x, b.y), 0).rgb, texelFetch(graded, b, 0).rgb, part.x);
  return mix(top, bottom, part.y);
}

void main() {
  vec2 at = placeInArea();
  vec2 size = pictureSize / targetSize;
  vec2 corner = (at - 0.5) * size;
  vec3 sum = vec3(0.0);
  for (int j = 0; j < taps; j++)
    for (int i = 0; i < taps; i++)
      sum += sampleAt(corner + (vec2(i, j) + 0.5) / float(taps) * size - 0.5);
  colour = vec4(displayed(marked(sum / float(taps * taps), at)), 1.0);
}`

/** Two delivered pictures → how far they are apart in each channel, times a gain. */
export const DIFFERENCE_FRAGMENT = `#version 300 es
precision highp float;
precision highp sampler2D;
uniform sampler2D one;
uniform sampler2D other;
uniform float differenceGain;
out vec4 colour;
${AREA}${DISPLAY}

void main() {
  ivec2 at = ivec2(placeInArea());
  vec3 apart = abs(texelFetch(one, at, 0).rgb - texelFetch(other, at, 0).rgb);
  colour = vec4(displayed(differenceGain * apart), 1.0);
}`
