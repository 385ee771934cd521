using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;

namespace Coilwright.Analysis.Solving;

/// <summary>A coil's resistance from its winding alone, without the field: layer by layer as forecast, with what was learnt.</summary>
public static class WindingResistance
{
    /// <summary>Turns that still count as wound.</summary>
    private const double FewestTurns = 1;

    private const int MostRounds = 20;

    /// <summary>DC resistance of a coil at 20 °C, Ω.</summary>
    /// <param name="model">The pickup.</param>
    /// <param name="coil">Place of the coil.</param>
    public static double At20C(PickupModel model, int coil) =>
        ForecastScene.WoundOf(model, coil).DcResistanceOhm(20) * (model.Coils[coil].LearntResistance?.Factor ?? 1);

    /// <summary>Mean length of a turn of a coil, m.</summary>
    public static double MeanTurnM(PickupModel model, int coil) => ForecastScene.WoundOf(model, coil).MeanTurnM;

    /// <summary>
    /// Turns of a coil that read so many ohms at 20 °C: fewer turns leave out the outermost, longest ones, so that they are not in the
    /// ratio of the ohms.
    /// </summary>
    /// <param name="model">The pickup; its coil's own turns are where the search begins.</param>
    /// <param name="coil">Place of the coil.</param>
    /// <param name="ohm">Wanted resistance at 20 °C, Ω, above 0.</param>
    /// <remarks>
    /// Each round takes turns in the ratio of the ohms; the mean turn follows slowly, so that every round leaves a small part of the error.
    /// </remarks>
    public static double TurnsFor(PickupModel model, int coil, double ohm)
    {
        double turns = model.Coils[coil].Winding.Turns;
        for (int round = 0; round < MostRounds; round++)
        {
            double next = Math.Max(FewestTurns, turns * ohm / At20C(WithTurns(model, coil, turns), coil));
            if (Math.Abs(next - turns) < 1e-3)
            {
                return next;
            }

            turns = next;
        }

        return turns;
    }

    /// <summary>The pickup with other turns on one coil; a build or capacitance measured on the turns before no longer holds.</summary>
    public static PickupModel WithTurns(PickupModel model, int coil, double turns) =>
        model with
        {
            Coils =
            [
                .. model.Coils.Select(
                    (one, c) =>
                        c == coil
                            ? one with
                            {
                                Winding = one.Winding with { Turns = turns, MeasuredBuildM = null, MeasuredCapacitanceF = null },
                            }
                            : one
                ),
            ],
        };
}
