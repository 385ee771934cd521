using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Electrostatics;

namespace Coilwright.Analysis.Tests.Forecasts;

public sealed class CapacitanceSharesTests
{
    private static readonly LeadModel s_leads = new()
    {
        Construction = LeadConstruction.SingleBraided,
        LengthM = 0.3,
        ToScreenFPerM = 200e-12,
    };

    [Fact]
    public void The_shares_add_up_to_the_capacitance()
    {
        foreach (PickupModel model in (PickupModel[])[Pickups.Single(), Pickups.Twin(), Pickups.Twin() with { Leads = s_leads }])
        {
            PickupForecast pickup = Of(model);
            Assert.Equal(pickup.Capacitance.Value, pickup.CapacitanceShares!.All.Sum(share => share.Value), 1e-18);
            Assert.All(pickup.CapacitanceShares.All, share => Assert.True(share.Estimate.Low >= 0));
        }
    }

    [Fact]
    public void Leads_add_what_they_have_and_lower_the_peak()
    {
        PickupForecast with = Of(Pickups.Single() with { Leads = s_leads }),
            longer = Of(Pickups.Single() with { Leads = s_leads with { LengthM = 0.8 } });
        Assert.Equal(60e-12, with.CapacitanceShares!.Leads.Value, 1e-18);
        Assert.Equal(100e-12, longer.Capacitance.Value - with.Capacitance.Value, 1e-18);
        Assert.True(longer.UnloadedResonance!.Frequency.Value < with.UnloadedResonance!.Frequency.Value);
    }

    [Fact]
    public void Leads_that_nobody_named_are_assumed_and_widen_the_interval_most()
    {
        PickupForecast unnamed = Of(Pickups.Twin()),
            named = Of(Pickups.Twin() with { Leads = s_leads });
        Assert.Equal((Basis.Assumed, Basis.Forecast), (Share(unnamed), Share(named)));
        Assert.Contains("leads", unnamed.Capacitance.Derivation.NarrowBy!, StringComparison.Ordinal);
        Assert.True(Width(unnamed) > 2 * Width(named));

        static Basis Share(PickupForecast pickup) => pickup.CapacitanceShares!.Leads.Estimate.Basis;
        static double Width(PickupForecast pickup) => pickup.Capacitance.Estimate.High / pickup.Capacitance.Estimate.Low - 1;
    }

    [Fact] // what was measured had its metal and its leads on; leads that the recipe names come on top
    public void A_measured_capacitance_takes_the_place_of_all_but_named_leads()
    {
        PickupModel model = Pickups.Single();
        PickupModel measured = model with
        {
            Coils = [model.Coils[0] with { Winding = model.Coils[0].Winding with { MeasuredCapacitanceF = 120e-12 } }],
        };
        PickupForecast alone = Of(measured),
            with = Of(measured with { Leads = s_leads });
        Assert.Equal(120e-12, alone.Capacitance.Value, 1e-18);
        Assert.Equal(Basis.Measured, alone.CapacitanceShares!.Winding.Estimate.Basis);
        Assert.Equal(180e-12, with.Capacitance.Value, 1e-18);
    }

    private static PickupForecast Of(PickupModel model) =>
        Forecaster.Predict(model, load: null, cancel: TestContext.Current.CancellationToken).Pickup;
}
