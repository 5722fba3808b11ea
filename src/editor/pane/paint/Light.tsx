import { useDeferredValue, useMemo } from 'react';
import type { Design } from '../../../design/schema.ts';
import { shadowsUnder } from '../../../output/picture/shadows.ts';
import type { Plan } from '../../../plan/types.ts';
import { Button } from '../../control/Button.tsx';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { FaceMap } from '../../control/FaceMap.tsx';
import { Section } from '../../control/Section.tsx';
import { Slider } from '../../control/Slider.tsx';
import { regionData } from '../../control/svgPath.ts';
import { useSay } from '../../control/useSay.ts';
import { ExportStatus } from '../../kept/export/ExportStatus.tsx';
import { PICTURE } from '../../kept/export/exports.ts';
import { useExport } from '../../kept/export/useExport.ts';
import { useCommit, useEditor, useSettledDesign, useStore } from '../../state/hooks.ts';
import { PICTURE_SIZES } from '../../state/store.ts';
import { useWords } from '../../words/t.ts';
import { ShownAreas } from './FinishMap.tsx';
import { Gleams } from './Gleams.tsx';

/** The light of the shadow view: turned by sliders, seen on a small face and on the drawing. */
export function Light({ plan }: { plan: Plan }) {
  const t = useWords();
  const say = useSay();
  const store = useStore();
  const commit = useCommit();
  const look = useEditor((s) => s.look);
  const { light } = useSettledDesign();
  const shown = useDeferredValue(light);
  const shadows = useMemo(() => shadowsUnder(plan, shown), [plan, shown]);
  const put = (fields: Partial<Design['light']>) =>
    commit(
      [{ kind: 'set', field: 'light', value: { ...light, ...fields } }],
      t('did.change', { name: t('paint.light') }),
      { merge: 'light' },
    );
  return (
    <Section id="paint-light" title="paint.light">
      <p className="note">{t('light.lead')}</p>
      <div className="map-pair">
        <FaceMap
          wood
          face={plan.face}
          label={t('light.picture', {
            altitude: say.angle(light.altitude),
            azimuth: say.angle(light.azimuth),
          })}
        >
          <ShownAreas plan={plan} />
          <Gleams plan={plan} light={shown} />
          {shadows.map((s) => (
            <path key={s.z} className="map-shadow" d={regionData(s.region)} />
          ))}
        </FaceMap>
        <div className="light-fields">
          <Slider
            label={t('light.azimuth')}
            hint={t('light.azimuthHint')}
            min={-180}
            max={180}
            value={light.azimuth}
            told={say.angle(light.azimuth)}
            onChange={(azimuth) => put({ azimuth })}
          />
          <Slider
            label={t('light.altitude')}
            hint={t('light.altitudeHint')}
            min={5}
            max={85}
            value={light.altitude}
            told={say.angle(light.altitude)}
            onChange={(altitude) => put({ altitude })}
          />
          <Button
            aria-pressed={look === 'shadow'}
            onClick={() => store.setState({ look: look === 'shadow' ? 'color' : 'shadow' })}
          >
            {t('light.show')}
          </Button>
        </div>
      </div>
      <PictureFields face={plan.face} />
    </Section>
  );
}

/** How large a picture of the face is written, and the writing of it. */
function PictureFields({ face }: { face: Plan['face'] }) {
  const t = useWords();
  const store = useStore();
  const { job, write } = useExport();
  const most = useEditor((s) => s.picturePixels);
  const choices = PICTURE_SIZES.map((pixels) => {
    const of = (side: number) => String(Math.round((side * pixels) / Math.max(face.width, face.height)));
    return {
      value: String(pixels),
      label: t('light.sizeOf', { most: String(pixels), width: of(face.width), height: of(face.height) }),
    };
  });
  return (
    <div className="picture-fields">
      <ChoiceField
        label={t('light.size')}
        value={String(most)}
        choices={choices}
        onCommit={(value) => {
          const picturePixels = PICTURE_SIZES.find((pixels) => String(pixels) === value);
          if (picturePixels) store.setState({ picturePixels });
        }}
      />
      <Button disabled={job !== null} onClick={() => void write(PICTURE, true)}>
        {t('room.save')}
      </Button>
      {job ? <ExportStatus job={job} /> : null}
    </div>
  );
}
