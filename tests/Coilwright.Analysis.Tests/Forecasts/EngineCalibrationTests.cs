using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Fields;

namespace Coilwright.Analysis.Tests.Forecasts;

/// <summary>The fast engine put right at a committed design.</summary>
public sealed class EngineCalibrationTests
{
    [Fact]
    public void At_its_own_design_the_corrected_engine_foretells_what_the_accurate_one_does()
    {
        PickupModel model = Pickups.Single();
        double Inductance(IFieldEngine engine) => Forecaster.Predict(model, null, new ForecastOptions { Engine = engine, Strings = false }, TestContext.Current.CancellationToken).Pickup.Inductance.Value;
        FieldCalibration calibration = Assert.IsType<FieldCalibration>(EngineCalibration.Of(model, TestContext.Current.CancellationToken));
        double accurate = Inductance(new AccurateFieldEngine()), fast = Inductance(new FastFieldEngine()), corrected = Inductance(new CalibratedFieldEngine(calibration));
        Assert.True(Math.Abs(fast / accurate - 1) > 1e-4);
        Assert.Equal(accurate, corrected, 2e-4 * accurate);
    }
}
