using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Coilwright.Physics.Wire;

/// <summary>The wire a shop can buy: sizes, builds and enamels of the standards.</summary>
public sealed class WireCatalogue
{
    private static readonly Lazy<WireCatalogue> Shared = new(() => new WireCatalogue());
    private readonly Dictionary<string, Insulation> _insulations;

    private WireCatalogue()
    {
        Sizes = [.. WireTables.Sizes()];
        Insulations = [.. WireTables.Insulations()];
        _insulations = Insulations.ToDictionary(i => i.Key, StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>The tables that come with the program.</summary>
    public static WireCatalogue Standard => Shared.Value;

    /// <summary>AWG 34–50 with half sizes, then 0.030–0.160 mm, thick to thin and thin to thick as the standards list them.</summary>
    public IReadOnlyList<WireSize> Sizes { get; }

    /// <summary>Enamels, in the order of the table.</summary>
    public IReadOnlyList<Insulation> Insulations { get; }

    /// <summary>
    /// The size a person means by "AWG 42", "awg42", "42", "#42", "42.5 AWG", "0.063 mm", "63 µm", "2.5 thou" or ".0025\""; null when there
    /// is none.
    /// </summary>
    /// <remarks>
    /// A bare number from 34 to 50 is a gauge; one below 1 is a diameter in millimetres. A diameter in inches or thou is that of the copper
    /// and
    /// means the AWG size nearest to it; one in metric units is of the metric series, or of an AWG size when it is written as finely as
    /// one.
    /// </remarks>
    /// <param name="gauge">What was typed.</param>
    public WireSize? Find(string gauge)
    {
        if (
            TryParse(gauge, out double number, out bool metric)
            && Sizes.FirstOrDefault(s => s.IsMetric == metric && Math.Abs(s.Number - number) < 1e-6) is { } listed
        )
        {
            return listed;
        }

        if (WireDiameter.Parse(gauge) is not { } typed)
        {
            return null;
        }

        WireSize? series = typed.Inches
            ? null
            : Sizes.FirstOrDefault(s => s.IsMetric && Math.Abs(s.Bare.NominalM - typed.DiameterM) < 1e-9);
        WireSize nearest = Sizes.Where(s => !s.IsMetric).MinBy(s => Math.Abs(s.Bare.NominalM - typed.DiameterM))!;
        double within = typed.Inches ? WireDiameter.WithinInches : WireDiameter.WithinMetric;
        return series ?? (Math.Abs(nearest.Bare.NominalM / typed.DiameterM - 1) <= within ? nearest : null);
    }

    /// <summary>The enamel with this key; null when there is none.</summary>
    /// <param name="key">Key of the table; case and spaces around it do not matter.</param>
    public Insulation? FindInsulation(string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return _insulations.GetValueOrDefault(key.Trim());
    }

    /// <summary>The wire of one coil from the tables, with the standard's limits as 95 % intervals.</summary>
    /// <exception cref="ArgumentException">There is no such size, build or enamel; the message says what there is.</exception>
    /// <param name="gauge">As a person writes it.</param>
    /// <param name="build">Film build or grade: "single", "heavy", "grade-1" or "1"…</param>
    /// <param name="insulation">Key of an enamel, "plain-enamel"…</param>
    public WireModel ModelFor(string gauge, string build, string insulation) =>
        TryModelFor(gauge, build, insulation, out WireModel? model, out string? why) ? model : throw new ArgumentException(why);

    /// <summary>As <see cref="ModelFor"/>, saying why not and what comes nearest.</summary>
    /// <param name="gauge">As a person writes it.</param>
    /// <param name="build">Film build or grade: "single", "heavy", "grade-1" or "1"…</param>
    /// <param name="insulation">Key of an enamel, "plain-enamel"…</param>
    /// <param name="model">The wire; null when there is none.</param>
    /// <param name="why">Why there is none, for the person who asked; null when there is one.</param>
    public bool TryModelFor(
        string gauge,
        string build,
        string insulation,
        [NotNullWhen(true)] out WireModel? model,
        [NotNullWhen(false)] out string? why
    )
    {
        model = null;
        why = null;
        if (Find(gauge) is not WireSize size)
        {
            why = $"There is no wire size \"{gauge}\". Nearest: {string.Join(", ", NearestSizes(gauge))}.";
        }
        else if (FindInsulation(insulation) is not Insulation enamel)
        {
            why = $"There is no insulation \"{insulation}\". Nearest: {string.Join(", ", NearestInsulations(insulation))}.";
        }
        else if (!size.Builds.TryGetValue(Canonical(build), out DiameterLimits overall))
        {
            why = $"{size.Gauge} is not made in build \"{build}\". It is made in: {string.Join(", ", size.Builds.Keys)}.";
        }
        else
        {
            model = Model(size, overall, enamel);
        }

        return model is not null;
    }

    /// <summary>Up to three sizes nearest to what was asked, by diameter when it can be read as a size.</summary>
    /// <param name="gauge">What was typed.</param>
    public IReadOnlyList<string> NearestSizes(string gauge)
    {
        if (WireDiameter.Parse(gauge) is { } typed)
        {
            return
            [
                .. Sizes
                    .Where(s => s.IsMetric != typed.Inches)
                    .OrderBy(s => Math.Abs(s.Bare.NominalM - typed.DiameterM))
                    .Take(3)
                    .Select(s => s.Gauge),
            ];
        }

        if (!TryParse(gauge, out double number, out bool metric))
        {
            return NearNames.Find(gauge ?? "", Sizes.Select(s => s.Gauge), 3);
        }

        return [.. Sizes.Where(s => s.IsMetric == metric).OrderBy(s => Math.Abs(s.Number - number)).Take(3).Select(s => s.Gauge)];
    }

    /// <summary>Up to three enamel keys nearest to what was asked.</summary>
    /// <param name="key">What was typed.</param>
    public IReadOnlyList<string> NearestInsulations(string key) => NearNames.Find(key ?? "", _insulations.Keys, 3);

    private static WireModel Model(WireSize size, DiameterLimits overall, Insulation enamel) =>
        new()
        {
            ConductivitySPerM = size.ConductivitySPerM,
            Gauge = size.Gauge,
            Insulation = enamel.Key,
            BareDiameterM = size.Bare.ToEstimate(),
            OverallDiameterM = overall.ToEstimate(),
            EnamelPermittivity = enamel.Permittivity,
        };

    private static string Canonical(string build)
    {
        string name = (build ?? "").Trim().ToLowerInvariant().Replace(' ', '-');
        return name is "1" or "2" or "3" ? "grade-" + name : name;
    }

    private static bool TryParse(string? gauge, out double number, out bool metric)
    {
        string text = (gauge ?? "").Trim();
        metric = text.EndsWith("mm", StringComparison.OrdinalIgnoreCase);
        bool named = text.Contains("awg", StringComparison.OrdinalIgnoreCase) || text.StartsWith('#');
        string digits = text.Replace("awg", "", StringComparison.OrdinalIgnoreCase)
            .Replace("mm", "", StringComparison.OrdinalIgnoreCase)
            .Replace("#", "", StringComparison.Ordinal)
            .Trim()
            .Replace(',', '.');
        bool read = double.TryParse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number);
        if (read && !named && number < 1)
        {
            metric = true;
        }

        return read && !(named && metric);
    }
}
