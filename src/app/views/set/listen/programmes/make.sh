#!/bin/sh
# Makes the spoken programmes of the demonstration from invented words. Needs espeak-ng, sox and opus-tools.
# Every file is about 10 s, one channel, 12 kbit/s Opus.
set -eu
cd "$(dirname "$0")"
speak() { # name voice speed pitch words
  espeak-ng -v "$2" -s "$3" -p "$4" -w raw.wav "$5"
  sox raw.wav -r 24000 -c 1 -b 16 said.wav highpass 90 lowpass 4500 trim 0 11 gain -n -3
  opusenc --quiet --speech --bitrate 12 --padding 0 --serial 1 said.wav "$1.opus"
  rm raw.wav said.wav
}
speak evening-news en-gb 150 42 'This is the evening news. The bridge at Little Withy opens again on Monday. The ferry keeps its winter hours. And in the market, pears are plentiful and onions are dear.'
speak sea-areas en-gb-scotland 135 30 'And now the sea areas. Outer Lantern: west, four or five, rain later, good. Saltmarsh Deep: northwest, six, showers. Corvale Sound: variable, three, fog patches, moderate.'
speak story en-gb-x-rp+f3 160 60 'Now the keeper of the lamp had three daughters, and the youngest could hear the tide turn in her sleep. One night, she said, the sea has lost something, and it wants it back.'
speak lesson en-us+f2 145 55 'Lesson nine. Wind the wire close, turn beside turn, and hold it tight until the varnish is dry. Then count again. It is always one turn fewer than you think.'
speak market en-gb-x-gbclan 175 48 'Prices on the quay this morning. Herring, forty a basket. Rope, by the fathom, as yesterday. Copper wire is up, and so, I am told, are the spirits of those who sell it.'
speak village en-gb-x-gbcwmd+m7 165 35 'Good afternoon, this is the village hour. The band meets on Thursday in the barn. Somebody has left one boot at the mill. If it is yours, please come, with the other.'
