#!/bin/bash
# A job array of three parts on a one-node Slurm, merged and held to the single
# run. Starts slurmctld, slurmd and munge in a folder of its own and stops them
# again; installs nothing. Exits 77 with the reason where Slurm cannot start.
#   tests/offer/slurm.sh PROGRAM ORDER
#
# On a cluster whose nodes share a file system, a map in 64 parts is:
#
#   cat > array.sh <<'JOB'
#   #!/bin/bash
#   exec ./bedwright offer params/orders/sizes.yaml --vary track.rail_length=60..120in/0.25in \
#     --vary track.bunk_pitch=12..36in/0.25in --vary track.extension_count=0..5 \
#     --part "$SLURM_ARRAY_TASK_ID/$SLURM_ARRAY_TASK_COUNT" --out parts
#   JOB
#   sbatch --wait --array=1-64 --cpus-per-task=8 array.sh
#   ./bedwright offer --merge parts/offer-*-of-64.json --out map
#
# SLURM_ARRAY_TASK_COUNT is the number of tasks given, so --array starts at 1. A part
# that failed is run again by its number alone.
set -euo pipefail
program=$1 order=$2
vary=(--vary track.rail_length=72..96in/8in --vary track.bunk_pitch=20in,24in --vary track.extension_count=0..1)
parts=3

folder=$(mktemp -d /tmp/bedwright-slurm-XXXXXX)
started=()
finish() {
  local pid
  for pid in "${started[@]}"; do kill "$pid" 2>/dev/null || true; done
  for pid in "${started[@]}"; do wait "$pid" 2>/dev/null || true; done
  rm -rf "$folder"
}
trap finish EXIT

skip() {
  echo "skipped: $1"
  [ $# -lt 2 ] || tail -n 5 "$2" || true
  exit 77
}

export PATH=$PATH:/usr/sbin:/sbin
for command in slurmctld slurmd sbatch munged; do
  command -v $command >/dev/null || skip "$command is not installed (Debian: slurm-wlm, munge)"
done
[ "$(id -u)" -eq 0 ] || skip "slurmd wants to be root"

# Authentication: a munge of our own, with its own key and socket.
mkdir -p "$folder"/{munge,state,spool,log}
chmod 755 "$folder"
chmod 700 "$folder/munge"
head -c 1024 /dev/urandom >"$folder/munge/key"
chmod 600 "$folder/munge/key"
mkdir -m 755 "$folder/run"
munged --foreground --key-file="$folder/munge/key" --socket="$folder/run/munge.socket" --pid-file="$folder/run/munged.pid" \
  --log-file="$folder/munge/log" --seed-file="$folder/munge/seed" --force >"$folder/log/munged" 2>&1 &
started+=($!)
for _ in $(seq 50); do
  [ -S "$folder/run/munge.socket" ] && break
  sleep 0.1
done
[ -S "$folder/run/munge.socket" ] || skip "munge did not start" "$folder/log/munged"

host=$(hostname -s)
port=$((20000 + RANDOM % 20000))
cat >"$folder/slurm.conf" <<CONF
ClusterName=bench
SlurmctldHost=$host(127.0.0.1)
SlurmUser=root
SlurmctldPort=$port
SlurmdPort=$((port + 1))
AuthType=auth/munge
AuthInfo=socket=$folder/run/munge.socket
CredType=cred/munge
StateSaveLocation=$folder/state
SlurmdSpoolDir=$folder/spool
SlurmctldPidFile=$folder/run/slurmctld.pid
SlurmdPidFile=$folder/run/slurmd.pid
SlurmctldLogFile=$folder/log/slurmctld
SlurmdLogFile=$folder/log/slurmd
ProctrackType=proctrack/linuxproc
TaskPlugin=task/none
MpiDefault=none
ReturnToService=2
SchedulerType=sched/builtin
SelectType=select/cons_tres
SelectTypeParameters=CR_CPU
NodeName=$host NodeAddr=127.0.0.1 CPUs=$(nproc) State=UNKNOWN
PartitionName=all Nodes=$host Default=YES MaxTime=INFINITE State=UP
CONF
export SLURM_CONF=$folder/slurm.conf
slurmctld -D >"$folder/log/slurmctld.out" 2>&1 &
started+=($!)
slurmd -D >"$folder/log/slurmd.out" 2>&1 &
started+=($!)
for _ in $(seq 100); do
  sinfo -h -o %T 2>/dev/null | grep -q '^idle' && break
  sleep 0.2
done
sinfo -h -o %T 2>/dev/null | grep -q '^idle' || skip "no Slurm node came up" "$folder/log/slurmd.out"

"$program" offer "$order" "${vary[@]}" --out "$folder/single"

# As above, with what is varied passed on.
cat >"$folder/array.sh" <<'JOB'
#!/bin/bash
exec "$PROGRAM" offer "$ORDER" "$@" --part "$SLURM_ARRAY_TASK_ID/$PARTS" --out "$PARTS_FOLDER"
JOB
export PROGRAM=$program ORDER=$order PARTS=$parts PARTS_FOLDER=$folder/parts
sbatch --wait --export=ALL --array=1-$parts --output="$folder/log/part-%a" "$folder/array.sh" "${vary[@]}" || {
  echo "the job array failed:"
  cat "$folder"/log/part-* || true
  exit 1
}
[ "$(find "$folder/parts" -name 'offer-*-of-3.json' | wc -l)" -eq 3 ] || { echo "not three parts"; exit 1; }
"$program" offer --merge "$folder"/parts/offer-*.json --out "$folder/merged"

for file in offer.csv offer.json offer.pdf offer.svg; do
  cmp "$folder/single/$file" "$folder/merged/$file"
done
echo "three parts by Slurm, merged, are the single run byte for byte"
