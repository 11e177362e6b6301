import { LIST_WIDTH } from './listTexels.ts'

/**
 * The operations of a process list (core/process/processOperations.ts), where LIST_STEPS calls
 * them one after another. Numbers and tables lie in one texture: `at` is the texel an operation's
 * begin at.
 */
export const LIST_FUNCTIONS = `
#ifdef LIST_STEPS
uniform highp sampler2D listTexels;

vec4 listTexel(int at) {
  return texelFetch(listTexels, ivec2(at % ${LIST_WIDTH}, at / ${LIST_WIDTH}), 0);
}

vec3 lineStep(vec3 x, int at) {
  vec4 r = listTexel(at);
  vec4 g = listTexel(at + 1);
  vec4 b = listTexel(at + 2);
  vec4 limits = listTexel(at + 3);
  vec3 sums = vec3(dot(r.xyz, x), dot(g.xyz, x), dot(b.xyz, x)) + vec3(r.w, g.w, b.w);
  return clamp(sums, limits.x, limits.y);
}

vec3 powerStep(vec3 x, int at) {
  vec3 powered = min(pow(max(x, vec3(1e-30)), listTexel(at).xyz), vec3(1073741824.0));
  return mix(x, powered, greaterThan(x, vec3(0.0)));
}

vec3 curveStep(vec3 x, int at, int last) {
  vec3 place = clamp(x, 0.0, 1.0) * float(last);
  ivec3 before = min(ivec3(place), ivec3(last - 1));
  vec3 part = place - vec3(before);
  return vec3(
    mix(listTexel(at + before.r).r, listTexel(at + before.r + 1).r, part.r),
    mix(listTexel(at + before.g).g, listTexel(at + before.g + 1).g, part.g),
    mix(listTexel(at + before.b).b, listTexel(at + before.b + 1).b, part.b));
}

vec3 trilinearStep(vec3 x, int at, int points) {
  vec3 place = clamp(x, 0.0, 1.0) * float(points - 1);
  ivec3 before = min(ivec3(place), ivec3(points - 2));
  vec3 part = place - vec3(before);
  int red = points * points;
  int first = at + before.r * red + before.g * points + before.b;
  vec3 low = mix(
    mix(listTexel(first).rgb, listTexel(first + 1).rgb, part.b),
    mix(listTexel(first + points).rgb, listTexel(first + points + 1).rgb, part.b), part.g);
  first += red;
  vec3 high = mix(
    mix(listTexel(first).rgb, listTexel(first + 1).rgb, part.b),
    mix(listTexel(first + points).rgb, listTexel(first + points + 1).rgb, part.b), part.g);
  return mix(low, high, part.r);
}

// The axis with the longest part of the way first; the first and the last are never the same.
vec3 tetrahedralStep(vec3 x, int at, int points) {
  vec3 place = clamp(x, 0.0, 1.0) * float(points - 1);
  ivec3 before = min(ivec3(place), ivec3(points - 2));
  vec3 part = place - vec3(before);
  ivec3 steps = ivec3(points * points, points, 1);
  int first = at + before.r * steps.r + before.g * steps.g + before.b;
  int whole = first + steps.r + steps.g + steps.b;
  int longest = part.r >= part.g && part.r >= part.b ? steps.r : part.g >= part.b ? steps.g : steps.b;
  int shortest = part.b <= part.r && part.b <= part.g ? steps.b : part.g <= part.r ? steps.g : steps.r;
  float most = max(part.r, max(part.g, part.b));
  float least = min(part.r, min(part.g, part.b));
  float middle = max(min(part.r, part.g), min(max(part.r, part.g), part.b));
  return listTexel(first).rgb * (1.0 - most) + listTexel(first + longest).rgb * (most - middle)
    + listTexel(whole - shortest).rgb * (middle - least) + listTexel(whole).rgb * least;
}

vec3 listed(vec3 x) {
  LIST_STEPS
  return x;
}
#else
vec3 listed(vec3 x) { return x; }
#endif
`
