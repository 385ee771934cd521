using System.Collections.Frozen;
using Coilwright.Physics;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>What a part is made of. SI units.</summary>
/// <param name="RelativePermeability">Of small alternating fields about the working point.</param>
/// <param name="ConductivitySPerM">Electrical conductivity, S/m.</param>
/// <param name="PolarisationT">Source term µ0·M0 when fully magnetised, T; zero for soft materials.</param>
internal sealed record MaterialValues(Estimate RelativePermeability, Estimate ConductivitySPerM, Estimate PolarisationT);

/// <summary>Materials by name.</summary>
/// <remarks>
/// Read: alnico 5 permeability 3.6 and resistivity 0.47 µΩ·m, low-carbon steel about 280 and 0.16 µΩ·m, ferrite 1.05–1.1, alnico 5 working polarisation near 0.31 T.
/// From memory: the other alnicos, rare earth, and the resistivities of nickel silver 0.29, brass 0.062, stainless steel 0.72 µΩ·m. Polarisations but alnico 5's are assumed.
/// </remarks>
internal static class MaterialTable
{
    private const double AlnicoSPerM = 1 / 0.47e-6;
    private const double SteelSPerM = 1 / 0.16e-6;

    public static FrozenDictionary<string, MaterialValues> ByName { get; } = new Dictionary<string, MaterialValues>
    {
        [Catalogue.Air] = Of(1, 1, 1, 0),
        ["alnico-2"] = Of(6.4, 5.4, 7, AlnicoSPerM, 0.25),
        ["alnico-3"] = Of(6.5, 5.8, 7.2, AlnicoSPerM, 0.22),
        ["alnico-4"] = Of(4.1, 3.8, 6, AlnicoSPerM, 0.24),
        ["alnico-5"] = Of(3.6, 2.8, 4.4, AlnicoSPerM, 0.31),
        ["alnico-8"] = Of(2.8, 2, 3.6, AlnicoSPerM, 0.6),
        ["ferrite"] = Of(1.08, 1.05, 1.1, 0, 0.38),
        ["rare-earth"] = Of(1.05, 1.02, 1.1, 1 / 1.5e-6, 1.2),
        ["low-carbon-steel"] = Of(280, 100, 500, SteelSPerM),
        ["string-steel"] = Of(80, 40, 150, 1 / 0.2e-6),
        ["stainless-steel"] = Of(1.02, 1, 1.1, 1 / 0.72e-6),
        ["nickel-silver"] = Of(1, 1, 1, 1 / 0.29e-6),
        ["brass"] = Of(1, 1, 1, 1 / 0.062e-6),
        ["copper"] = Of(1, 1, 1, 58e6),
        ["aluminium"] = Of(1, 1, 1, 1 / 0.028e-6),
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private static MaterialValues Of(double mu, double muLow, double muHigh, double sPerM, double polarisationT = 0) => new(
        new Estimate(mu, muLow, muHigh, Basis.Assumed), Estimate.Within(sPerM, 0.15, Basis.Assumed), Estimate.Within(polarisationT, 0.15, Basis.Assumed));
}
