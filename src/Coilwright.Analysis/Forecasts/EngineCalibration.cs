using Coilwright.Physics;
using Coilwright.Physics.Fields;

namespace Coilwright.Analysis.Forecasts;

/// <summary>Finds what the fast field engine misses at a committed design.</summary>
public static class EngineCalibration
{
    /// <summary>Solves a pickup with both engines; null when they cannot be compared.</summary>
    public static FieldCalibration? Of(PickupModel model, CancellationToken cancel = default)
    {
        ForecastOptions fast = new() { Strings = false }, accurate = fast with { Engine = new AccurateFieldEngine() };
        return FieldCalibration.Of(new ForecastScene(model, accurate, cancel).Field, new ForecastScene(model, fast, cancel).Field);
    }
}
