// The bell of the timers: three tones and a shake of the phone, without a file.
const bell = (() => {
  let audio = null;
  let ringing = 0;
  let left = 0;

  // A browser sounds only for a reader who has touched the page.
  const wake = () => {
    audio ??= new AudioContext();
    audio.resume();
  };

  const tone = (start) => {
    const pitch = audio.createOscillator();
    const volume = audio.createGain();
    pitch.frequency.value = 880;
    volume.gain.setValueAtTime(0.4, start);
    volume.gain.exponentialRampToValueAtTime(0.001, start + 0.4);
    pitch.connect(volume).connect(audio.destination);
    pitch.start(start);
    pitch.stop(start + 0.4);
  };

  // Told each second how many timers ring now: it strikes every third for a minute, and anew for one more timer.
  const ring = (number) => {
    if (number > ringing) left = 60;
    if (!number) left = 0;
    ringing = number;
    if (!left || left-- % 3) return;
    navigator.vibrate?.([200, 100, 200]);
    if (audio) [0, 0.3, 0.6].forEach((after) => tone(audio.currentTime + after));
  };

  return { wake, ring };
})();
