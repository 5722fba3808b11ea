import { ToggleGroup } from 'radix-ui';
import { LANGUAGE_TAGS, LANGUAGES, type Language } from '../../plan/words/languages.ts';
import { useStore } from '../state/hooks.ts';
import { chooseLanguage } from '../state/language.ts';
import { useLanguage, useWords } from '../words/t.ts';

/** The languages, each by its own name; for the first page, where there are no settings yet. */
export function LanguageSwitch() {
  const t = useWords();
  const store = useStore();
  const language = useLanguage();
  return (
    <ToggleGroup.Root
      type="single"
      className="switch first-languages"
      value={language}
      aria-label={t('settings.language')}
      onValueChange={(value) => {
        if (value) void chooseLanguage(store, value as Language);
      }}
    >
      {LANGUAGE_TAGS.map((tag) => (
        <ToggleGroup.Item key={tag} value={tag} lang={tag} className="btn">
          {LANGUAGES[tag].name}
        </ToggleGroup.Item>
      ))}
    </ToggleGroup.Root>
  );
}
