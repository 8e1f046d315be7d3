. /tmp/w/s16/draft-s17/env.sh
$PY - <<'P'
import sys,time
from pathlib import Path
from sequencer.tasks.shows import hear_song
files=sorted(Path('/tmp/w/s16/corpus/audio').glob('*.ogg'))
want=files[::2][:20]+files[::4][:10]
seen=[]
for f in want:
    if f in seen: continue
    seen.append(f)
    t=time.process_time(); s=hear_song(f); print(f.stem,round(s.tempo,1),len(s.sections),round(s.duration),f"{time.process_time()-t:.1f}s",flush=True)
P
