using Coilwright.Physics.Fields;
using static Coilwright.Physics.Tests.Fields.FieldCases;

namespace Coilwright.Physics.Tests.Fields;

/// <summary>The fast engine corrected at one design stays within 0.4 % of the accurate one at designs nearby.</summary>
public sealed class FieldCalibrationTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(4.5)]
    [InlineData(100)]
    public void Ten_changes_keep_the_corrected_inductance_near_the_accurate_one(double mu)
    {
        FieldProblem start = Design(mu);
        FieldCalibration calibration = FieldCalibration.Of(Accurate.Solve(start, Cancel), Fast.Solve(start, Cancel))!;
        Evidence check = Evidence.Own(FormattableString.Invariant($"Fast engine, corrected at one design, at ten designs nearby, permeability {mu}"), "accurate engine", "ratchet: what the slider promises is 0.4 %");
        foreach (FieldProblem changed in (FieldProblem[])[
            Design(mu, length: 0.020), Design(mu, length: 0.016), Design(mu, radius: 0.002), Design(mu, radius: 0.0026), Design(mu, build: 0.004),
            Design(mu, pitch: 0.0096), Design(mu, height: 0.008), Design(mu, former: 0.004), Design(mu, top: 0.011), Design(mu, length: 0.0165, radius: 0.0025, build: 0.0035, height: 0.010)])
        {
            double accurate = Accurate.Solve(changed, Cancel).StaticInductanceH[0, 0];
            check.WithinPart(calibration.Correct(Fast.Solve(changed, Cancel)).StaticInductanceH[0, 0], accurate, 0.004);
        }

        check.Record();
    }

    [Fact]
    public void Corrected_design_itself_is_the_accurate_one_and_other_coils_are_left_alone()
    {
        FieldProblem start = TwoCoils(4.5) with { FrequenciesHz = [1000] };
        FieldSolution accurate = Accurate.Solve(start, Cancel), fast = Fast.Solve(start, Cancel);
        FieldCalibration calibration = FieldCalibration.Of(accurate, fast)!;
        FieldSolution corrected = calibration.Correct(fast);
        Assert.Equal(1, corrected.StaticInductanceH[0, 1] / accurate.StaticInductanceH[0, 1], 1e-12);
        Assert.Equal(1, corrected.SpectrumH[0][0, 0].Real / accurate.SpectrumH[0][0, 0].Real, 1e-3);
        FieldSolution single = Fast.Solve(Design(4.5), Cancel);
        Assert.Same(single, calibration.Correct(single));
        Assert.Null(FieldCalibration.Of(accurate, single));
    }

    private static FieldProblem Design(double mu, double length = 0.018, double radius = 0.0024, double top = 0.009, double build = 0.003, double pitch = 0.0104, double height = 0.011, double former = 0.00325)
    {
        PoleModel rods = Rods([.. Enumerable.Range(0, 6).Select(i => (i - 2.5) * pitch)], mu, 0, radius, length, top);
        return One(new FieldCoil(Former(0.02975, former, height), build, 1, 1, default, [rods]));
    }
}
