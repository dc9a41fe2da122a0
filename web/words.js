// Everything that the page itself says, in English and French; what the program says is in wasm/words. {marks} are filled in by say().

const LANGUAGES = ['en', 'fr'];
const WORDS = {
  notChecked: ['NOT CHECKED', 'NON VÉRIFIÉ'],
  loading: ['Loading. Nothing is computed yet.', 'Chargement. Rien n\'est encore calculé.'],
  canvas: ['Plan and verdict, drawn. Tab, arrows and Enter work in it; F6 leads to all of it as text.',
    'Plan et verdict, dessinés. Tab, flèches et Entrée y servent ; F6 mène au même contenu en texte.'],
  readAsText: ['Read as text', 'Lire en texte'],
  backToDrawing: ['Back to the drawing', 'Retour au dessin'],
  backToPlan: ['Back to the plan', 'Retour au plan'],
  ok: ['OK', 'OK'],
  cancel: ['Cancel', 'Renoncer'],
  take: ['Take it', 'Prendre'],

  // The text view.
  rightAsItStands: ['The value shown is right', 'La valeur affichée est juste'],
  fromDevice: ['Take from device', 'Mesurer avec l\'appareil'],
  notEntered: ['Not entered yet.', 'Pas encore saisi.'],
  checkCode: ['Check code {code}', 'Code de contrôle {code}'],
  stillChecking: ['Still checking', 'Examen en cours'],
  keys: ['Keys', 'Touches'],
  message: ['Message', 'Message'],

  // What stops the app.
  stoppedTitle: ['The app is not running', 'L\'appli ne tourne pas'],
  stoppedVerdict: ['NOT CHECKED. The app is not running.', 'NON VÉRIFIÉ. L\'appli ne tourne pas.'],
  stoppedWarning: ['Do not act on a verdict that was on the screen before. Your plan is kept in this browser up to the last change.',
    'N\'agissez pas d\'après un verdict affiché avant. Votre plan est gardé dans ce navigateur jusqu\'au dernier changement.'],
  startAgain: ['Start again', 'Redémarrer'],
  rescue: ['Get the kept plan as a file', 'Obtenir le plan gardé en fichier'],
  startFresh: ['Start without the kept plan', 'Démarrer sans le plan gardé'],
  mend: ['Mend this copy of the app (needs the network)', 'Réparer cette copie de l\'appli (réseau nécessaire)'],
  noPicture: ['This browser draws no 3-D graphics (WebGL) for the app. It may be switched off in its settings, or the device may be short of memory.',
    'Ce navigateur ne dessine pas en 3D (WebGL) pour l\'appli. C\'est peut-être coupé dans ses réglages, ou la mémoire manque.'],
  ownFault: ['A fault in the app itself has stopped it.', 'Une faute de l\'appli elle-même l\'a arrêtée.'],
  noWebAssembly: ['This browser cannot run the app: it has no WebAssembly. A browser of the last five years has it.',
    'Ce navigateur ne peut pas faire tourner l\'appli : il n\'a pas WebAssembly. Un navigateur des cinq dernières années l\'a.'],
  partMissing: ['A part of the app could not be loaded. Start again where there is a network, or mend this copy.',
    'Une partie de l\'appli n\'a pas pu être chargée. Redémarrez là où il y a du réseau, ou réparez cette copie.'],
  pictureGone: ['The device has taken the picture away. Everything entered is kept, and all of it can be read and changed as text.',
    'L\'appareil a retiré l\'image. Tout ce qui est saisi est gardé, et tout peut être lu et changé en texte.'],
  wait: ['Wait', 'Attendre'],

  // The copy of the app.
  newer: ['A newer version of the app is ready. Your plan stays as it is; the verdict is computed anew.',
    'Une version plus récente de l\'appli est prête. Votre plan reste comme il est ; le verdict est recalculé.'],
  useNow: ['Use it now', 'L\'utiliser maintenant'],
  keepThis: ['Keep this version', 'Garder cette version'],
  worksOffline: ['Works with no network from now on: {whole} of {files} files checked.', 'Marche désormais sans réseau : {whole} fichiers sur {files} vérifiés.'],
  notOffline: ['Not ready for offline use: {whole} of {files} files are whole.', 'Pas prêt sans réseau : {whole} fichiers sur {files} sont entiers.'],

  // Plans kept, and their files.
  denied: ['This browser keeps nothing here ({why}). The app goes on working, but its plans are gone when it closes: save them as files.',
    'Ce navigateur ne garde rien ici ({why}). L\'appli continue, mais ses plans sont perdus à la fermeture : enregistrez-les en fichiers.'],
  full: ['The storage of this browser is full: the last change is not kept. The app goes on working and tries again with each change. Save the plan as a file.',
    'La mémoire de ce navigateur est pleine : le dernier changement n\'est pas gardé. L\'appli continue et réessaie à chaque changement. Enregistrez le plan en fichier.'],
  unreadable: ['The plan kept last cannot be read by this version of the app. It is set aside, not deleted: the list of plans has it and gives its text as a file.',
    'Le dernier plan gardé est illisible pour cette version de l\'appli. Il est mis de côté, pas effacé : la liste des plans l\'a et donne son texte en fichier.'],
  changedElsewhere: ['This plan was changed in another window, too. Both are kept: what you have here is now a plan of its own on the list.',
    'Ce plan a aussi été changé dans une autre fenêtre. Les deux sont gardés : celui d\'ici est maintenant un plan à part dans la liste.'],
  savePlan: ['Save the plan as a file', 'Enregistrer le plan en fichier'],
  unknownPlan: ['Unknown plan', 'Plan inconnu'],
  unreadableFile: ['unreadable plan', 'plan illisible'],
  fileTooLarge: ['"{name}" is {size} kB. A plan file is at most {most} kB. Nothing was opened; your plan is as it was.',
    '« {name} » fait {size} ko. Un fichier de plan fait au plus {most} ko. Rien n\'a été ouvert ; votre plan est comme il était.'],
  fileUnread: ['"{name}" could not be read ({why}). Nothing was opened; your plan is as it was.',
    '« {name} » n\'a pas pu être lu ({why}). Rien n\'a été ouvert ; votre plan est comme il était.'],

  // About the app.
  aboutTitle: ['About Guywright', 'À propos de Guywright'],
  purpose: ['Guywright tells whether a guyed leg at an edge will stand: GO, NO-GO or NOT CHECKED, and why. Nothing leaves this device by itself.',
    'Guywright dit si une jambe haubanée au bord tiendra : GO, NO-GO ou NON VÉRIFIÉ, et pourquoi. Rien ne quitte cet appareil de soi-même.'],
  version: ['Version', 'Version'],
  not: ['What it is, and what it is not', 'Ce que c\'est, et ce que ce n\'est pas'],
  checked: ['How it was checked', 'Comment il a été vérifié'],
  parts: ['What it is made of', 'De quoi il est fait'],
  partsUnreadable: ['The list of parts could not be read from the copy of the app. ({why})', 'La liste des parties n\'a pas pu être lue dans la copie de l\'appli. ({why})'],
  copyWhole: ['Offline copy {release}: {whole} of {files} files whole', 'Copie hors ligne {release} : {whole} fichiers sur {files} entiers'],
  noCopy: ['No offline copy in this browser yet', 'Pas encore de copie hors ligne dans ce navigateur'],
  appVersion: ['App {version}, build {build}', 'Appli {version}, construction {build}'],
  engineVersion: ['Engine {version}, build {build}', 'Moteur {version}, construction {build}'],
  planVersion: ['Plan files of version {plan}', 'Fichiers de plan, version {plan}'],
  howChecked1: ['Forces and stability are compared with a second computation, written apart from the first and solved by another method, on more than a thousand random rigs in seven load cases each.',
    'Forces et stabilité sont comparées à un second calcul, écrit à part et résolu par une autre méthode, sur plus de mille montages tirés au hasard, en sept cas de charge chacun.'],
  howChecked2: ['Textbook cases of statics, and published figures for ropes and strengths, are kept as tests, each with its source.',
    'Des cas d\'école de statique et des chiffres publiés de cordes et de résistances servent d\'essais, chacun avec sa source.'],
  howChecked3: ['Every rule is tested at, just below and just above its limit, and each alone must turn a sound rig into NO-GO.',
    'Chaque règle est essayée à sa limite, juste dessous et juste dessus, et chacune seule doit faire d\'un bon montage un NO-GO.'],
  howChecked4: ['The native and the browser program run the same tests and must give the same answers.',
    'Le programme natif et celui du navigateur passent les mêmes essais et doivent donner les mêmes réponses.'],
  howChecked5: ['Random damage to plan files and random input to the computation must never crash it or give a GO that it has not computed.',
    'Des fichiers abîmés et des données prises au hasard ne doivent jamais le planter ni donner un GO qu\'il n\'a pas calculé.'],
  howChecked6: ['It was not checked by tests of real rigs to failure, and no authority has approved it.',
    'Il n\'a pas été vérifié par des essais de vrais montages jusqu\'à rupture, et aucune autorité ne l\'a approuvé.'],
};

let chosen = 0;

/** What is said in the language chosen. */
export function say(what, fills = {}) {
  return WORDS[what][chosen].replace(/\{(\w+)\}/g, (mark, name) => String(fills[name] ?? mark));
}

/** 'en' or 'fr': from now on. Elements with data-say and data-say-label say it at once. */
export function speak(language) {
  chosen = Math.max(0, LANGUAGES.indexOf(language));
  document.documentElement.lang = LANGUAGES[chosen];
  for (const node of document.querySelectorAll('[data-say]')) node.textContent = say(node.dataset.say);
  for (const node of document.querySelectorAll('[data-say-label]')) node.setAttribute('aria-label', say(node.dataset.sayLabel));
}
