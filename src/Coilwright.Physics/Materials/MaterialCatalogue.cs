namespace Coilwright.Physics.Materials;

/// <summary>Materials that come with the program, each figure with its standing.</summary>
/// <remarks>
/// Keys in brackets are those of docs/sources.md. Working polarisation of alnico 5: a 4.75 mm rod 16–17 mm long reads about 95 mT at its
/// face [RodField], which with a recoil permeability of 3.6 is 0.45 T if the sensor lies 0.5 mm off (0.31 T would be it for a uniformly
/// magnetised rod read at 1 mm). No such reading stands
/// for the other grades: theirs is scaled by remanence or put wide, and marked assumed. One gauss reading at a pole face settles it.
/// </remarks>
public static class MaterialCatalogue
{
    private const string Supplier = "TMC Magnetics, table of cast alnico 5 and 8 [Alnico5]";
    private const string Handbook = "from memory, composition and temper ±10 %";
    private const string Insulators = "list of dielectrics at thelen.us, frequency not stated [Gap]";
    private const string RareEarth = "LIGO 40 m laboratory, notes on magnetic suspension [RareEarth]";
    private static readonly MaterialFigure NonMagnetic = Figure(1, 1, 1, "assumed", "not magnetic");
    private static readonly MaterialFigure NoConduction = Figure(0, 0, 0, "assumed", "insulator");
    private static readonly MaterialFigure AlnicoConductivity = Resistivity(0.47e-6, 0.10, "read", Supplier);
    private static readonly Material[] Known = [.. Magnets(), .. Metals(), .. Dielectrics()];
    private static readonly Dictionary<string, Material> ByKey = Known.ToDictionary(m => m.Key, StringComparer.OrdinalIgnoreCase);

    /// <summary>All of them: magnets, then metals, then insulators.</summary>
    public static IReadOnlyList<Material> All => Known;

    /// <summary>The material with this key; null when there is none.</summary>
    /// <param name="key">A key such as "alnico-5"; case and spaces around it do not matter.</param>
    public static Material? Find(string key) => ByKey.GetValueOrDefault((key ?? "").Trim());

    /// <summary>Up to three keys nearest to what was typed.</summary>
    /// <param name="key">What was typed.</param>
    public static IReadOnlyList<string> NearestNames(string key) => NearNames.Find(key ?? "", Known.Select(m => m.Key), 3);

    private static IEnumerable<Material> Magnets()
    {
        yield return Alnico("alnico-2", Figure(6.2, 5.2, 7.2, "memory", "6.4 and 6.0, both from memory"), 0.19, 0.10, 0.28);
        yield return Alnico("alnico-3", Figure(6.5, 5.5, 7.5, "memory", "6.5 and 6.4, both from memory"), 0.18, 0.09, 0.27);
        yield return Alnico("alnico-4", Figure(5.0, 3.8, 6.2, "memory", "4.1 and 5.8, both from memory: they disagree"), 0.20, 0.11, 0.29);
        yield return new Material
        {
            Key = "alnico-5",
            RelativePermeability = Figure(3.6, 2.8, 4.4, "read", Supplier + "; 4.3 and about 3 from memory"),
            ConductivitySPerM = AlnicoConductivity,
            WorkingPolarisationT = Figure(
                0.45,
                0.30,
                0.57,
                "assumed",
                "taken from 95 mT read at the face of a 4.75 mm rod of 16–17 mm [RodField], with the sensor assumed 0 to 1 mm off the face"
            ),
        };
        yield return Alnico(
            "alnico-8",
            Figure(2.8, 1.9, 3.7, "read", Supplier + " gives 3.6, 2.0 from memory: they disagree"),
            0.45,
            0.30,
            0.60
        );
        yield return Magnet(
            "ferrite",
            Figure(1.075, 1.05, 1.10, "memory", "recoil permeability of the kind, from memory"),
            Figure(1e-4, 0, 1, "assumed", "a ceramic"),
            0.38,
            0.20,
            0.44
        );
        yield return Magnet(
            "neodymium",
            Figure(1.05, 1.03, 1.10, "read", RareEarth),
            Resistivity(1.6e-6, 0.15, "read", RareEarth),
            1.15,
            0.70,
            1.40
        );
        yield return Magnet(
            "samarium-cobalt",
            Figure(1.05, 1.03, 1.10, "read", RareEarth),
            Resistivity(0.86e-6, 0.15, "read", RareEarth),
            1.00,
            0.80,
            1.20
        );
    }

    private static IEnumerable<Material> Metals()
    {
        MaterialFigure steel = Figure(
            280,
            100,
            500,
            "read",
            "N. Bowler, a plate of 1018 steel, small signals, 1–10 Hz [Steel1018]; ±30 % and more by bar (assumed)"
        );
        yield return Metal("low-carbon-steel", steel, Resistivity(0.16e-6, 0.10, "memory", Handbook));
        yield return Metal(
            "string-steel",
            Figure(80, 40, 150, "assumed", "hard-drawn wire under small changes; compare designs, do not trust volts"),
            Resistivity(0.18e-6, 0.15, "assumed", "a carbon steel's")
        );
        yield return Metal("nickel-silver", NonMagnetic, Resistivity(0.29e-6, 0.10, "memory", Handbook));
        yield return Metal("brass", NonMagnetic, Resistivity(0.062e-6, 0.10, "memory", Handbook));
        yield return Metal(
            "stainless-steel",
            Figure(1.01, 1, 1.1, "assumed", "austenitic; cold work raises it"),
            Resistivity(0.72e-6, 0.10, "memory", Handbook)
        );
        yield return Metal("copper", NonMagnetic, Resistivity(1 / 58e6, 0.01, "read", "standard annealed copper [IEC60028]"));
    }

    private static IEnumerable<Material> Dielectrics()
    {
        yield return Dielectric("air", Figure(1, 1, 1, "assumed", "vacuum within 0.06 %"));
        yield return Dielectric("vulcanised-fibre", Figure(4.0, 2.5, 6.0, "assumed", "cellulose, moves with moisture"));
        yield return Dielectric("abs", Figure(2.87, 2.7, 3.1, "read", Insulators));
        yield return Dielectric("acetal", Figure(3.6, 3.4, 3.8, "read", Insulators));
        yield return Dielectric("nylon", Figure(4.5, 4.0, 5.0, "read", Insulators));
        yield return Dielectric("phenolic", Figure(4.9, 4.4, 5.4, "read", Insulators));
        yield return Dielectric("wax", Figure(2.35, 2.1, 2.6, "read", Insulators + ": paraffin 2.1–2.5, beeswax 2.6–3.0"));
        yield return Dielectric("lacquer", Figure(3.5, 2.5, 5.0, "assumed", "a cellulose lacquer or varnish"));
        yield return Dielectric("epoxy", Figure(3.6, 3.2, 4.2, "read", Insulators));
    }

    private static Material Alnico(string key, MaterialFigure permeability, double workingT, double lowT, double highT) =>
        new()
        {
            Key = key,
            RelativePermeability = permeability,
            ConductivitySPerM = key == "alnico-8" ? AlnicoConductivity : Resistivity(0.47e-6, 0.10, "assumed", "as that of alnico 5"),
            WorkingPolarisationT = Figure(workingT, lowT, highT, "assumed", "no reading at a pole face for this grade; measure one"),
        };

    private static Material Magnet(
        string key,
        MaterialFigure permeability,
        MaterialFigure conductivity,
        double workingT,
        double lowT,
        double highT
    ) =>
        new()
        {
            Key = key,
            RelativePermeability = permeability,
            ConductivitySPerM = conductivity,
            WorkingPolarisationT = Figure(
                workingT,
                lowT,
                highT,
                "assumed",
                "near the remanence range of the kind: these hardly demagnetise themselves"
            ),
        };

    private static Material Metal(string key, MaterialFigure permeability, MaterialFigure conductivity) =>
        new()
        {
            Key = key,
            RelativePermeability = permeability,
            ConductivitySPerM = conductivity,
        };

    private static Material Dielectric(string key, MaterialFigure permittivity) =>
        new()
        {
            Key = key,
            RelativePermeability = NonMagnetic,
            ConductivitySPerM = NoConduction,
            RelativePermittivity = permittivity,
        };

    private static MaterialFigure Figure(double value, double low, double high, string standing, string source) =>
        new(new Estimate(value, low, high, Basis.Assumed), standing, source);

    private static MaterialFigure Resistivity(double ohmM, double fraction, string standing, string source) =>
        Figure(1 / ohmM, 1 / (ohmM * (1 + fraction)), 1 / (ohmM * (1 - fraction)), standing, source);
}
