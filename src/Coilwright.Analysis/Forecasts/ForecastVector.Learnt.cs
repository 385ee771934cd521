using Coilwright.Physics;
using Coilwright.Physics.Winding;

namespace Coilwright.Analysis.Forecasts;

/// <summary>Where the shop's readings take the place of what a forecast does not know.</summary>
internal sealed partial class ForecastVector
{
    /// <summary>
    /// DC resistance of a coil of whose kind the shop has learnt: the plain forecast at its middle times what was read over it. What
    /// moves the plain forecast is in the coils that were read, except the turns, and the ohms per metre of a measured spool.
    /// </summary>
    private double LearntOhm(int c, double[] x, (int Common, int Coil) learnt, double turns)
    {
        CoilModel coil = _scene.Model.Coils[c];
        CoilPlaces places = _inputs.Coils[c];
        double bareM = coil.Wire.BareDiameterM.Value,
            ohmPerM = places.OhmPerM >= 0 ? x[places.OhmPerM] : ForecastScene.OhmPerM(coil, bareM);
        WoundCoil wound = ForecastScene.Wind(
            coil,
            bareM,
            coil.Wire.OverallDiameterM.Value,
            turns,
            _scene.Lays[c].PackingFactor.Value,
            ohmPerM
        );
        return wound.DcResistanceOhm(x[_inputs.Temperature]) * x[learnt.Common] * x[learnt.Coil];
    }

    /// <summary>What a coil's inductance was read to be over the plain forecast; null where nothing was learnt.</summary>
    private double? LearntHenry(int coil, double[] x) =>
        _inputs.Learnt[coil].Inductance is { } learnt ? x[learnt.Common] * x[learnt.Coil] : null;

    /// <summary>What two coils share goes with the root of both.</summary>
    private double LearntMutual(int i, int j) => Math.Sqrt((_learnt[i] ?? 1) * (_learnt[j] ?? 1));

    /// <summary>Learnt, where the coils' own readings say it; in a pickup only when they say it of every coil.</summary>
    /// <param name="model">The pickup.</param>
    /// <param name="coil">Place of the coil; null for the whole pickup.</param>
    /// <param name="isResistance">True for the DC resistance, false for the inductance.</param>
    public static bool IsLearnt(PickupModel model, int? coil, bool isResistance)
    {
        bool Of(CoilModel one) => (isResistance ? one.LearntResistance : one.Learnt?.Inductance) is not null;
        return coil is { } place ? Of(model.Coils[place]) : model.Coils.All(Of);
    }
}
