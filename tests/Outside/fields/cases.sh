# The cases: sourced by make-field-results.
nodes() { awk '/^\$Nodes/ { getline; print; exit }' "$1.msh"; }
for fine in ${SIX_FINE-1.6 1.1}; do
  mesh six "fine=$fine"
  for mu in 4.5 100; do
    solve static six "muRod=$mu"
    row "six_rods_mu${mu}_mesh${fine}" single 0 "$(value L.txt)" 0 "$(nodes six)"
  done
done
pair="a=28.5 r0=4 b=4.5 h=6.5 coilY=9 rodLow=-9 rodTop=6 barX=62 barY=12 barLow=-9 barTop=-6"
for fine in ${PAIR_FINE-1.8 1.3}; do
  mesh pair "$pair fine=$fine"
  for odd in 0 1; do
    solve static pair "$pair muRod=100 muBar=4.5 odd=$odd"
    row "pair_bar_mesh${fine}" "$([ "$odd" = 0 ] && echo even || echo odd)" 0 "$(value L.txt)" 0 "$(nodes pair)"
  done
done
