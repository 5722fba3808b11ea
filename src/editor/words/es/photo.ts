import type { photoWords as en } from '../en/photo.ts';

/** Words of the photo under the drawing. */
export const photoWords: Record<keyof typeof en, string> = {
  'photo.title': 'Foto bajo el dibujo',
  'photo.lead':
    'Dibujar sobre una foto de la cama. Se queda en este dispositivo y no forma parte del archivo de diseño.',
  'photo.open': 'Abrir una foto',
  'photo.other': 'Otra foto',
  'photo.remove': 'Quitarla',
  'photo.putBack': 'Volver a poner la última',
  'photo.shown': 'A la vista',
  'photo.locked': 'Bloqueada',
  'photo.opacity': 'Opacidad',
  'photo.modes': 'Ajustar la foto a mano',
  'photo.mode.move': 'Mover',
  'photo.mode.scale': 'Tamaño por un largo',
  'photo.mode.straighten': 'Poner esquinas',
  'photo.hint.move': 'Tirar de la foto hasta su sitio.',
  'photo.hint.scale': 'Llevar las dos señales a un largo conocido y escribir ese largo.',
  'photo.hint.straighten':
    'Llevar las cuatro señales a las esquinas de la cama en la foto y mostrarla enderezada.',
  'photo.apart': 'De señal a señal',
  'photo.straight': 'Enderezada por las esquinas de la cama',
  'photo.straightHint': 'Como si se hubiera hecho justo de frente.',
  'photo.corner.lowerLeft': 'Esquina inferior izquierda de la cama',
  'photo.corner.lowerRight': 'Esquina inferior derecha de la cama',
  'photo.corner.upperRight': 'Esquina superior derecha de la cama',
  'photo.corner.upperLeft': 'Esquina superior izquierda de la cama',
  'photo.across': 'Desde la izquierda de la foto',
  'photo.down': 'Desde arriba de la foto',
  'photo.noPicture': 'No es una foto que se pueda leer aquí: JPEG, PNG y WebP sí.',
  'photo.tooManyBytes': 'Pasa de {most} MB. Una copia menor enseña aquí lo mismo.',
  'photo.tooManyPixels': 'Pasa de {most} millones de píxeles. Una copia menor enseña aquí lo mismo.',
  'photo.damaged': 'Empieza como una foto, pero no se pudo leer hasta el final.',
  'say.photo': 'La foto {name} está bajo el dibujo',
};
