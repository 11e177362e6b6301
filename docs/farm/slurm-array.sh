#!/bin/sh
# The parts of a pass as a Slurm array, and their joining as a job that waits for it.
#   parts=$(sbatch --parsable --array=1-8 slurm-array.sh /shared/reel.json /shared/film)
#   sbatch --dependency=afterok:$parts slurm-array.sh /shared/reel.json /shared/film join 8
# Lost parts alone, again: sbatch --array=3,6 --export=ALL,PARTS=8 slurm-array.sh …
#SBATCH --job-name=reelwright
#SBATCH --cpus-per-task=2
#SBATCH --mem=2G
#SBATCH --requeue
set -eu
job=$1
out=$2
reelwright=${REELWRIGHT:-reelwright}

if [ "${3:-}" = join ]; then
  exec $reelwright join "$out".part-*-of-"$(printf %04d "$4")" --out "$out"
fi
# The array's own count is of the tasks given this time: PARTS holds where some are repeated.
exec $reelwright transfer "$job" --out "$out" \
  --part "$SLURM_ARRAY_TASK_ID/${PARTS:-$SLURM_ARRAY_TASK_COUNT}"
