using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Strings;

namespace Coilwright.Analysis.Tests.Forecasts;

/// <summary>Curves of the pictures against the numbers of the same forecast.</summary>
public sealed class PickupPicturesTests
{
    private static readonly Prediction s_forecast = Predict(With(Pickups.Single(), 45e-3));

    private static PickupPictures Pictures => s_forecast.Pictures!;

    [Fact]
    public void Curves_pass_through_the_numbers_told_of_the_middle_string()
    {
        StringForecast middle = s_forecast.Pickup.Strings[3];
        double Near(IEnumerable<(double X, double Value)> line, double x) => line.MinBy(point => Math.Abs(point.X - x)).Value;
        Assert.Equal(middle.Field.Value, Near(Pictures.Fields.Single().Points, 5.2e-3), 0.02 * middle.Field.Value);
        // a point of the line within 1.4 mm of the string
        Assert.InRange(Near(Pictures.Across, 5.2e-3) / middle.Sensitivity.Value, 0.85, 1.02);
        SpectrumForecast line = s_forecast.Pickup.Spectrum[1];
        (double hz, double henry, double ohm) = Pictures.Branch.MinBy(point => Math.Abs(point.FrequencyHz - 1000));
        Assert.InRange(hz, 950, 1050);
        Assert.Equal(line.Inductance.Value, henry, 0.002 * henry);
        Assert.Equal(line.Resistance.Value, ohm, 0.01 * ohm);
    }

    [Fact]
    public void What_is_heard_along_the_string_sums_to_the_whole_and_is_even()
    {
        (double Y, double Share)[] along = [.. Pictures.Along];
        double sum = Enumerable
            .Range(1, along.Length - 1)
            .Sum(i => (along[i].Y - along[i - 1].Y) * (along[i].Share + along[i - 1].Share) / 2);
        Assert.Equal(1, sum, 0.02);
        Assert.Equal(along[0].Y, -along[^1].Y, 1e-9);
        Assert.Equal(along[5].Share, along[^6].Share, 1e-9);
    }

    [Fact]
    public void Balance_is_about_the_mean_and_each_pull_is_towards_the_magnets_and_flattens()
    {
        double mean = s_forecast.Pickup.Strings.Average(one => one.Sensitivity.Value);
        foreach ((StringForecast one, StringDetail detail) in s_forecast.Pickup.Strings.Zip(Pictures.Strings))
        {
            Assert.Equal(20 * Math.Log10(one.Sensitivity.Value / mean), detail.BalanceDb.Value, 1e-6);
            Assert.InRange(detail.PullN.Value, 1e-5, 0.05); // millinewtons, common practice
            Assert.InRange(detail.PullN.Value, detail.PullN.Low, detail.PullN.High);
            Assert.InRange(detail.PitchShift!.Value.Value, -0.002, 0); // a few cents at most: read as "a few hertz at most"
            Assert.InRange(detail.SecondHarmonic.Value, 0.05, 0.8);
            Assert.True(detail.ThirdHarmonic.Value < detail.SecondHarmonic.Value);
        }
    }

    [Fact] // sin²(πp/L): a pickup at a quarter of the string takes ten times the pitch of one at the bridge
    public void The_same_pickup_by_the_neck_takes_more_pitch()
    {
        PickupPictures neck = Predict(With(Pickups.Single(), 160e-3)).Pictures!;
        double ratio = neck.Strings[2].PitchShift!.Value.Value / Pictures.Strings[2].PitchShift!.Value.Value;
        Assert.Equal(Math.Pow(Math.Sin(Math.PI * 160 / 648) / Math.Sin(Math.PI * 45 / 648), 2), ratio, 1e-6);
        Assert.Null(Predict(With(Pickups.Single(), 0)).Pictures!.Strings[2].PitchShift);
    }

    [Fact]
    public void A_pickup_without_strings_still_shows_its_branch_and_none_are_made_unasked()
    {
        PickupPictures pictures = Predict(Pickups.Single()).Pictures!;
        Assert.Empty(pictures.Fields);
        Assert.Equal(121, pictures.Branch.Count);
        Assert.Null(Forecaster.Predict(Pickups.Single(), null, cancel: TestContext.Current.CancellationToken).Pictures);
    }

    [Fact] // one pole moved aside: no half of the line may be copied from the other
    public void A_pickup_that_is_no_mirror_image_is_scanned_whole()
    {
        PickupModel odd = With(Pickups.Single(), 0);
        PoleModel poles = odd.Coils[0].Poles[0];
        odd = odd with
        {
            Coils =
            [
                odd.Coils[0] with
                {
                    Poles = [poles with { PositionsM = [.. poles.PositionsM.Select((x, i) => i == 5 ? x - 2e-3 : x)] }],
                },
            ],
        };
        (double X, double Value)[] across = [.. Predict(odd).Pictures!.Across];
        Assert.True(Math.Abs(across[3].Value / across[^4].Value - 1) > 0.02);
        Assert.Equal(Pictures.Across[3].VoltSPerM, Pictures.Across[^4].VoltSPerM, 1e-12);
    }

    private static Prediction Predict(PickupModel model) =>
        Forecaster.Predict(model, null, new ForecastOptions { Pictures = true }, TestContext.Current.CancellationToken);

    private static PickupModel With(PickupModel model, double fromBridgeM) =>
        model with
        {
            Strings = new StringSetModel
            {
                Count = 6,
                SpacingM = 10.4e-3,
                ClearanceM = 2.5e-3,
                ScaleLengthM = 0.648,
                FromBridgeM = fromBridgeM,
                Strings =
                [
                    .. UsualStrings
                        .For(6, 10.4e-3)
                        .Select(one => new StringModel
                        {
                            CoreDiameterM = one.CoreM,
                            OuterDiameterM = one.OuterM,
                            RelativePermeability = Estimate.Exact(80),
                        }),
                ],
            },
        };
}
