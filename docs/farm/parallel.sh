#!/bin/sh
# The parts of a pass on one machine by GNU parallel, then joined.
#   sh parallel.sh JOB OUT [PARTS] [AT-ONCE]     as: sh parallel.sh reel.json /disk/film 8 2
# Run it again after any fault: parts that are whole are not made anew.
set -eu
job=$1
out=$2
parts=${3:-8}
once=${4:-2}
reelwright=${REELWRIGHT:-reelwright}

# A part that fails is tried three times; the rest are made all the same.
seq "$parts" |
  parallel --will-cite --halt never --jobs "$once" --retries 3 \
    "$reelwright transfer {1} --out {2} --part {3}/$parts" ::: "$job" ::: "$out" :::: -

# shellcheck disable=SC2086
$reelwright join "$out".part-*-of-"$(printf %04d "$parts")" --out "$out"
