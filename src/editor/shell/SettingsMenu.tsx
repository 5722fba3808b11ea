import { SlidersHorizontal } from 'lucide-react';
import type { Design } from '../../design/schema.ts';
import { LANGUAGE_TAGS, LANGUAGES } from '../../plan/words/languages.ts';
import { Menu, MenuChoices, MenuItem, MenuLine, MenuSwitch } from '../control/Menu.tsx';
import { useCommit, useEditor, useStore } from '../state/hooks.ts';
import { chooseLanguage } from '../state/language.ts';
import { THEMES } from '../state/store.ts';
import { useLanguage, useWords } from '../words/t.ts';

const UNITS: readonly Design['measure']['unit'][] = ['in', 'ft-in', 'cm', 'mm'];
const FRACTIONS: readonly Design['measure']['fraction'][] = ['8', '16', '32', '64', 'decimal'];
const LOOKS = ['color', 'tape', 'shadow'] as const;

/** Language, units, fractions and the look of the screen. */
export function SettingsMenu() {
  const t = useWords();
  const language = useLanguage();
  const store = useStore();
  const commit = useCommit();
  const measure = useEditor((s) => s.edit.design.measure);
  const look = useEditor((s) => s.look);
  const theme = useEditor((s) => s.theme);
  const singleKeys = useEditor((s) => s.singleKeys);
  const set = (value: Design['measure']) =>
    commit([{ kind: 'set', field: 'measure', value }], t('did.measureStyle'));
  return (
    <Menu label={t('menu.settings')} icon={SlidersHorizontal}>
      <MenuItem
        label={t('keys.title')}
        hint={singleKeys ? '?' : undefined}
        onSelect={() => store.setState({ keysShown: true })}
      />
      <MenuSwitch
        label={t('settings.singleKeys')}
        on={singleKeys}
        onTurn={(on) => store.setState({ singleKeys: on })}
      />
      <MenuLine />
      <MenuChoices
        label={t('settings.language')}
        value={language}
        choices={LANGUAGE_TAGS.map((value) => ({ value, label: LANGUAGES[value].name }))}
        onChoose={(value) => void chooseLanguage(store, value)}
      />
      <MenuLine />
      <MenuChoices
        label={t('look.title')}
        value={look}
        choices={LOOKS.map((value) => ({ value, label: t(`look.${value}`) }))}
        onChoose={(value) => store.setState({ look: value })}
      />
      <MenuLine />
      <MenuChoices
        label={t('settings.unit')}
        value={measure.unit}
        choices={UNITS.map((value) => ({ value, label: t(`unit.${value}`) }))}
        onChoose={(unit) => set({ ...measure, unit })}
      />
      <MenuLine />
      <MenuChoices
        label={t('settings.fraction')}
        value={measure.fraction}
        choices={FRACTIONS.map((value) => ({ value, label: t(`fraction.${value}`) }))}
        onChoose={(fraction) => set({ ...measure, fraction })}
      />
      <MenuLine />
      <MenuChoices
        label={t('settings.theme')}
        value={theme}
        choices={(['auto', ...THEMES] as const).map((value) => ({ value, label: t(`theme.${value}`) }))}
        onChoose={(value) => store.setState({ theme: value })}
      />
    </Menu>
  );
}
