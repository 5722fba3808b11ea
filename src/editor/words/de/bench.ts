import type { benchWords as en } from '../en/bench.ts';

/** Words of what is kept on the device, and of links. */
export const benchWords: Record<keyof typeof en, string> = {
  'offline.stored': 'Auf diesem Gerät abgelegt: startet ab jetzt auch ohne Netz.',
  'offline.ready': 'Eine neuere Fassung liegt bereit und wartet. Was offen ist, bleibt erhalten.',
  'offline.overtaken':
    'In einem anderen Tab wurde eine neuere Fassung übernommen. Diese Seite läuft weiter wie bisher; neu starten, wann es passt.',
  'offline.take': 'Jetzt übernehmen',
  'offline.reload': 'Neu starten',
  'offline.broken':
    'Ein Teil dieser Seite ließ sich nicht laden. Den Entwurf in eine Datei speichern, dann die Seite neu starten.',
  'earlier.open': 'Frühere Stände',
  'earlier.title': 'Frühere Stände dieses Entwurfs',
  'earlier.lead':
    'Etwa alle zehn Minuten Arbeit auf diesem Gerät weggelegt. Ein geöffneter wird ein eigener Entwurf; dieser bleibt, wie er ist.',
  'earlier.none': 'Noch keine: der erste entsteht, wenn ein schon abgelegter Entwurf geändert wird.',
  'earlier.name': '{name}, Stand {time}',
  'bench.title': 'An der Säge',
  'bench.openLong': 'Stück für Stück, an der Säge',
  'link.keptOld': 'Aus einem Link geöffnet: {name}. Was dieses Gerät davon hatte, bleibt als „{copy}“.',
  'link.broken': 'Der Link enthält keinen ganzen Entwurf. Den Code neu lesen oder eine Entwurfsdatei öffnen.',
  'link.copyName': '{name}, vor dem Link',
  'link.merged': 'Getanes beider Geräte zusammengelegt',
  'link.unknown':
    'Dieses Gerät hat den Entwurf nicht, zu dem der Link gehört: Bringen Sie zuerst den Entwurf her.',
};
