import { isAsked, type Kept } from '../../../design/assembly/question.ts';
import { ASSEMBLIES, type AssemblyName } from '../../../design/assembly/table.ts';
import type { Group } from '../../../design/schema.ts';
import { keptBy } from '../../../list/keptBy.ts';
import { Button } from '../../control/Button.tsx';
import { FieldGrid } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { answer, askingOf, askWords, choiceWords, takeApart } from '../../edit/built.ts';
import { useEditor, useStore } from '../../state/hooks.ts';
import { t, useWords } from '../../words/t.ts';
import { BARE, finishChoices, stockChoices } from '../facts/choices.ts';

/** What is asked of a door, a window and such; each answer makes it again. */
export function BuiltFields({ group }: { readonly group: Group }) {
  const t = useWords();
  const store = useStore();
  const shown = useEditor((s) => s.edit.shown);
  const asking = askingOf(shown, group);
  if (!asking) return null;
  const { name, answers, box } = asking;
  return (
    <>
      <FieldGrid
        of={fieldsOf(ASSEMBLIES[name])}
        value={answers}
        onChange={(change: Kept) => answer(store, group, box, change)}
      />
      <Button title={t('built.takeApartHint')} onClick={() => takeApart(store, group)}>
        {t('built.takeApart')}
      </Button>
    </>
  );
}

/** The fields by which the questions of a kind are answered. */
const fieldsOf = keptBy(({ questions }: (typeof ASSEMBLIES)[AssemblyName]): FormField<Kept, Kept>[] =>
  Object.entries(questions).map(([name, question]): FormField<Kept, Kept> => {
    const shared = { label: askWords(name), when: (answers: Kept) => isAsked(question, answers) };
    const text = (answers: Kept) => String(answers[name] ?? '');
    const put = (next: number | string | boolean): Kept => ({ [name]: next });
    switch (question.is) {
      case 'count':
      case 'length': {
        const range = { min: question.least, max: question.most };
        const figure = { ...shared, ...range, get: (answers: Kept) => Number(answers[name]), put };
        return question.is === 'count'
          ? { ...figure, is: 'number', whole: true, step: 1 }
          : { ...figure, is: 'length' };
      }
      case 'yes':
        return {
          ...shared,
          is: 'switch',
          get: (answers) => answers[name] === true,
          put,
        };
      case 'choice':
        return {
          ...shared,
          is: 'choice',
          get: text,
          put,
          of: () => question.of.map((value) => ({ value, label: t(choiceWords(value)) })),
        };
      case 'stock':
        return {
          ...shared,
          is: 'choice',
          get: text,
          put,
          of: (answers, design) => stockChoices(design, [question.form], text(answers)),
        };
      default:
        return {
          ...shared,
          is: 'choice',
          get: (answers) => (answers[name] === null ? BARE : text(answers)),
          put: (next) => ({ [name]: next === BARE ? null : next }),
          of: (_, design) => finishChoices(design),
        };
    }
  }),
);
