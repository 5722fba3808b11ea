import { LANGUAGE_TAGS, LANGUAGES } from '../../plan/words/languages.ts';
import { Choices } from '../control/list/Choices.tsx';
import { useStore } from '../state/hooks.ts';
import { chooseLanguage } from '../state/language.ts';
import { useLanguage, useWords } from '../words/t.ts';

/** The languages, each by its own name; for the first page, where there are no settings yet. */
export function LanguageSwitch() {
  const t = useWords();
  const store = useStore();
  const language = useLanguage();
  return (
    <Choices
      className="switch first-languages"
      itemClass="btn"
      label={t('settings.language')}
      value={language}
      choices={LANGUAGE_TAGS.map((tag) => ({ id: tag, lang: tag, name: LANGUAGES[tag].name }))}
      onChoose={(tag) => void chooseLanguage(store, tag)}
    />
  );
}
