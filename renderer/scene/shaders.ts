/** The two small shaders of the scene: flat tone with a slanting hatch, and plain lines; both can be cut by a section. */

export const FACE_VERTEX = `
attribute vec3 tone;
attribute vec3 ink;
attribute float pattern;
attribute float spacing;
varying vec3 vTone;
varying vec3 vInk;
varying float vPattern;
varying float vSpacing;
varying float vForward;
void main() {
  vTone = tone;
  vInk = ink;
  vPattern = pattern;
  vSpacing = spacing;
  vForward = position.x;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}`

export const FACE_FRAGMENT = `
uniform float alpha;
uniform float section;
varying vec3 vTone;
varying vec3 vInk;
varying float vPattern;
varying float vSpacing;
varying float vForward;
void main() {
  if (vForward > section) discard;
  vec3 colour = vTone;
  if (vSpacing > 0.0) {
    float soft = fwidth(vPattern);
    float away = abs(mod(vPattern, vSpacing) - vSpacing * 0.5);
    float stroke = 1.0 - smoothstep(soft * 0.35, soft * 1.05, away);
    colour = mix(vTone, vInk, stroke * 0.55 * clamp(vSpacing / (soft * 4.0), 0.0, 1.0));
  }
  gl_FragColor = vec4(colour, alpha);
}`

export const LINE_VERTEX = `
attribute vec3 tone;
varying vec3 vTone;
varying float vForward;
void main() {
  vTone = tone;
  vForward = position.x;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}`

export const LINE_FRAGMENT = `
uniform float section;
varying vec3 vTone;
varying float vForward;
void main() {
  if (vForward > section) discard;
  gl_FragColor = vec4(vTone, 1.0);
}`
