# What both scripts of this folder share: works in a folder of its own with copies of the models.
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cp "$here"/pickup.geo "$here"/*.pro "$work"/
cd "$work"

mesh() { # name, numbers
  name=$1; shift
  set -- $(echo "$*" | sed 's/\([A-Za-z0-9]*\)=\([^ ]*\)/-setnumber \1 \2/g')
  gmsh -3 pickup.geo "$@" -format msh2 -o "$name.msh" -v 1 >&2
}
solve() { # model, mesh, numbers; leaves L.txt and its processor time in "seconds"
  model=$1; name=$2; shift 2
  set -- $(echo "$*" | sed 's/\([A-Za-z0-9]*\)=\([^ ]*\)/-setnumber \1 \2/g')
  rm -f L.txt
  getdp "$model.pro" -msh "$name.msh" -solve R "$@" -v 4 > log.txt 2>&1 || { tail log.txt >&2; exit 1; }
  seconds=$(sed -n 's/.*CPU = \([0-9.]*\)s.*/\1/p' log.txt | tail -1)
}
value() { awk '{ for (i = 1; i <= NF; i++) last = $i; } END { print last }' "$1"; }
row() { echo "$1,$2,$3,$4,$5,$seconds"; }
nodes() { awk '/^\$Nodes/ { getline; print; exit }' "$1.msh"; }
