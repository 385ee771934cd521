# The cases: sourced by make-field-results.
for fine in ${SIX_FINE-1.6}; do
  mesh six "fine=$fine"
  for mu in 4.5 100; do
    solve static six "muRod=$mu"
    row "six_rods_mu${mu}_mesh${fine}" single "$mu" "$(value L.txt)" "$(nodes six)"
  done
done
pair="a=28.5 r0=4 b=4.5 h=6.5 coilY=9 rodLow=-9 rodTop=6 barX=62 barY=12 barLow=-9 barTop=-6"
for fine in ${PAIR_FINE-1.8 1.3}; do
  mesh pair "$pair fine=$fine"
  for odd in 0 1; do
    solve static pair "$pair muRod=100 muBar=4.5 odd=$odd"
    row "pair_bar_mesh${fine}" "$([ "$odd" = 0 ] && echo even || echo odd)" 100 "$(value L.txt)" "$(nodes pair)"
  done
done
plate="barX=70 barY=30 barLow=-11 barTop=-10"
mesh plate "$plate fine=1.6"
for mu in 10 100; do
  solve static plate "$plate muRod=3.6 muBar=$mu"
  row "plate_mu${mu}_mesh1.6" single "$mu" "$(value L.txt)" "$(nodes plate)"
done
