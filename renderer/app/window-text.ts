/** The window's text: vue-i18n keeps the catalogues and the language; our text layer fills each sentence, in the units in force. */
import { computed } from 'vue'
import type { ComputedRef, Plugin } from 'vue'
import { createI18n } from 'vue-i18n'
import type { MessageContext } from 'vue-i18n'
import { createText, ENGLISH, GERMAN } from '../../shared/text/index.ts'
import type { Language, Text, TextKey, TextParams, UnitSystem } from '../../shared/text/index.ts'

export type Wording = { readonly language: Language; readonly units: UnitSystem }

const LANGUAGES = ['en', 'de'] as const

/** `wording` is read anew for each sentence, so that a change of units or language shows at once. */
export function createWindowText(wording: () => Wording): { readonly i18n: Plugin; readonly text: ComputedRef<Text> } {
  // Two words, not the trip they stand in: an edit that leaves them alone leaves every sentence alone.
  const language = computed(() => wording().language)
  const units = computed(() => wording().units)
  const texts = computed(() => ({ en: createText('en', units.value), de: createText('de', units.value) }))
  const isKey = (key: string): key is TextKey => texts.value.en.has(key)
  const i18n = createI18n({
    legacy: false,
    locale: wording().language,
    fallbackLocale: 'en',
    messages: { en: { ...ENGLISH }, de: { ...GERMAN } },
    // Keys are flat: a dot in them separates nothing.
    messageResolver: (messages: unknown, key: string) =>
      typeof messages === 'object' && messages !== null ? Reflect.get(messages, key) : null,
    // Nothing is compiled to code: our own filling does units, clocks and plurals.
    messageCompiler: (_message, { locale, key }) => {
      const spoken = LANGUAGES.find((each) => each === locale) ?? 'en'
      return (context: MessageContext) => (isKey(key) ? texts.value[spoken].t(key, context.values as TextParams) : key) // `t` below passes nothing else
    },
  })
  const text = computed((): Text => {
    i18n.global.locale.value = language.value
    return { ...texts.value[language.value], t: (key, params = {}) => i18n.global.t(key, params) }
  })
  return { i18n, text }
}
