import type { benchWords as en } from '../en/bench.ts';

/** Words of what is kept on the device, and of links. */
export const benchWords: Record<keyof typeof en, string> = {
  'earlier.open': 'Versiones anteriores',
  'earlier.title': 'Versiones anteriores de este diseño',
  'earlier.lead':
    'Se guardan en este dispositivo cada diez minutos de trabajo, más o menos. La que se abre pasa a ser un diseño aparte; este queda como está.',
  'earlier.none': 'Todavía ninguna: la primera se guarda al cambiar un diseño ya guardado.',
  'earlier.name': '{name}, del {time}',
  'offline.stored': 'Guardado en este dispositivo: desde ahora arranca sin red.',
  'offline.ready': 'Hay una versión más nueva. Espera hasta que se use; lo abierto sigue guardado.',
  'offline.overtaken':
    'En otra pestaña ya se usa una versión más nueva. Esta página sigue como está; recargarla cuando convenga.',
  'offline.take': 'Actualizar ahora',
  'offline.reload': 'Recargar',
  'offline.broken':
    'Una parte de esta página no se pudo cargar. Guardar el diseño en un archivo y recargar la página.',
  'bench.title': 'En la sierra',
  'bench.openLong': 'Pieza a pieza, en la sierra',
  'link.keptOld':
    'Abierto desde un enlace: {name}. Lo que este dispositivo tenía de él queda guardado como «{copy}».',
  'link.broken':
    'El enlace no contiene un diseño entero. Leer el código de nuevo o abrir un archivo de diseño.',
  'link.copyName': '{name}, antes del enlace',
  'link.merged': 'Lo hecho en ambos dispositivos, juntado',
  'link.unknown': 'Este dispositivo no tiene el diseño del enlace: traiga primero el diseño.',
};
