using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.Figures;
using Coilwright.Papers.Sheets;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Winding;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Readings;

namespace Coilwright.Papers.Tests.Figures;

/// <summary>
/// One grammar for every plot: both axes named with their units, ticks at round numbers, curves named where they run and no legend, lines
/// across the plot with their names.
/// </summary>
public sealed partial class FigureGrammarTests
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    public static TheoryData<string> Kinds => [.. All().Keys];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_figure_speaks_the_grammar(string kind)
    {
        string svg = All()[kind];
        if (Environment.GetEnvironmentVariable("COILWRIGHT_FIGURES") is { Length: > 0 } folder)
        {
            File.WriteAllText(Path.Combine(folder, kind + ".svg"), svg);
        }

        Assert.Equal("", Faults(svg));
    }

    [Fact]
    public void Every_kind_of_plot_of_papers_and_pages_is_asked()
    {
        string[] drawn =
        [
            .. typeof(PlotAxis)
                .Assembly.GetExportedTypes()
                .Where(type => type.Namespace == typeof(PlotAxis).Namespace)
                .Where(type =>
                    type.Name.EndsWith("Figure", StringComparison.Ordinal) || type.Name.EndsWith("Figures", StringComparison.Ordinal)
                )
                .Select(type => type.Name),
        ];
        string[] drawings = ["CoilSectionFigure", "PickupTopFigure"]; // to scale, with dimensions in place of axes
        Assert.Equal(
            drawn.Except(drawings).Order(StringComparer.Ordinal),
            All().Keys.Select(kind => kind.Split(' ')[0]).Distinct().Order(StringComparer.Ordinal)
        );
    }

    /// <summary>Proof that the check fails where it must.</summary>
    [Theory]
    [InlineData("Gain, dB", "Frequency, Hz", "0 5 10", "", "")]
    [InlineData("Gain", "Frequency, Hz", "0 5 10", "", "the upright axis has no unit: Gain")]
    [InlineData("Gain, dB", "Frequency", "0 5 10", "", "the axis along the page has no unit: Frequency")]
    [InlineData("Gain, dB", "Frequency, Hz", "1.17 2.34 3.51", "", "ticks are not round: 1.17 2.34 3.51")]
    [InlineData("Gain, dB", "Frequency, Hz", "0 9", "", "too few ticks: 0 9")]
    [InlineData("Gain, dB", "Frequency, Hz", "0 5 10", "<path d=\"M72 10h44\"/>", "a stroke of a legend")]
    [InlineData("Gain, dB", "Frequency, Hz", "0 5 10", "<path class=\"limit\" d=\"M72 10H700\"/>", "1 unnamed lines")]
    public void A_fault_is_found(string up, string along, string ticks, string more, string fault)
    {
        string axes = $"<text class=\"axis\" transform=\"rotate(-90)\">{up}</text><text class=\"axis\">{along}</text>",
            numbers = string.Concat(ticks.Split(' ').Select(tick => $"<text class=\"tick\" text-anchor=\"end\">{tick}</text>")),
            below = "<text class=\"tick\">20</text><text class=\"tick\">50</text><text class=\"tick\">1 k</text>";
        Assert.Equal(fault, Faults($"<svg xmlns=\"http://www.w3.org/2000/svg\">{axes}{numbers}{below}{more}</svg>"));
    }

    [Fact]
    public void The_curve_of_a_printed_sheet_names_its_axes_its_peak_and_round_ticks()
    {
        LumpedPickup pickup = new(6200, 2.5, 120e-12);
        LoadCircuit load = new() { CableCapacitanceF = 470e-12, InputResistanceOhm = 1e6 };
        CurvePart curve = new(
            "Response, loaded",
            PickupResponse.Compute(pickup, load, PickupResponse.LogFrequencies(20, 20_000, 300)),
            PickupResponse.FindPeak(pickup, load)
        );
        PrintedPaper paper = PrintedPaper.Of(new Sheet("Curve", "Harbour bridge", new Workshop.SetUp.SheetHeading(), [curve]));

        paper.Says("Frequency, Hz", "Response, loaded", "kHz, +", "10 k", "−10");
        Assert.Contains("relative", paper.Text, StringComparison.Ordinal);
    }

    private static string Faults(string figure)
    {
        XElement svg = XElement.Parse(figure);
        XElement[] texts = [.. svg.Descendants(s_svg + "text")],
            axes = [.. texts.Where(text => Is(text, "axis"))];
        string upright = axes.FirstOrDefault(IsUpright)?.Value ?? "",
            along = axes.FirstOrDefault(text => !IsUpright(text))?.Value ?? "";
        List<string> faults = [];
        faults.AddRange(Named().IsMatch(upright) ? [] : ["the upright axis has no unit: " + upright]);
        faults.AddRange(Named().IsMatch(along) ? [] : ["the axis along the page has no unit: " + along]);
        foreach (bool up in (bool[])[true, false])
        {
            faults.AddRange(
                TickFaults([.. texts.Where(text => Is(text, "tick") && (string?)text.Attribute("text-anchor") == "end" == up)])
            );
        }

        XElement[] paths = [.. svg.Descendants(s_svg + "path")];
        faults.AddRange(
            paths.Where(path => LegendStroke().IsMatch((string?)path.Attribute("d") ?? "")).Select(_ => "a stroke of a legend")
        );
        int unnamed = paths.Count(path => Is(path, "limit")) - texts.Count(text => Is(text, "name"));
        faults.AddRange(unnamed > 0 ? [$"{unnamed} unnamed lines"] : []);
        return string.Join("; ", faults);
    }

    private static IEnumerable<string> TickFaults(XElement[] ticks)
    {
        string all = string.Join(' ', ticks.Select(tick => tick.Value));
        double[] values = [.. ticks.Select(tick => Value(tick.Value)).Order()];
        if (values.Length < 3)
        {
            yield return "too few ticks: " + all;
        }
        else if (!values.All(value => IsStep(value)) && !AreEven(values))
        {
            yield return "ticks are not round: " + all;
        }
    }

    /// <summary>Each a whole number of steps of 1, 2 or 5 from zero, of a quarter of a turn, or of 6 dB (twice the voltage).</summary>
    private static bool AreEven(double[] values)
    {
        double step = values[1] - values[0];
        return (IsStep(step) || Math.Abs(step - 90) < 1e-9 || Math.Abs(step - 6) < 1e-9)
            && values.All(value => Math.Abs(value / step - Math.Round(value / step)) < 1e-6)
            && values.Zip(values.Skip(1)).All(pair => Math.Abs(pair.Second - pair.First - step) < 1e-6 * step);
    }

    private static bool IsStep(double value)
    {
        double digit = value > 0 ? value / Math.Pow(10, Math.Floor(Math.Log10(value) + 1e-9)) : 0;
        return Array.Exists((double[])[1, 2, 5], round => Math.Abs(digit - round) < 1e-6);
    }

    private static double Value(string tick)
    {
        string text = tick.Replace('−', '-').Replace(" k", "e3", StringComparison.Ordinal).TrimStart('+');
        return double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
    }

    private static bool Is(XElement element, string name) => (string?)element.Attribute("class") == name;

    private static bool IsUpright(XElement text) =>
        ((string?)text.Attribute("transform"))?.Contains("rotate(-90)", StringComparison.Ordinal) == true;

    private static Dictionary<string, string> All()
    {
        Response bare = Curve(LoadCircuit.None),
            loaded = Curve(new LoadCircuit { CableCapacitanceF = 470e-12, InputResistanceOhm = 1e6 });
        Dictionary<string, string> all = new(StringComparer.Ordinal)
        {
            ["ResponseFigure one"] = ResponseFigure.Svg([("a", bare)]),
            ["ResponseFigure three"] = ResponseFigure.Svg([("bare", bare), ("with 470 pF of cable", loaded), ("again", loaded)]),
            ["RecipeResponseFigure"] = RecipeResponseFigure.Svg(bare, null, null, ("revision B", loaded)),
            ["PulseFigure"] = PulseFigure.Svg(
                new Bobbin
                {
                    CoreLengthM = 64e-3,
                    CoreWidthM = 6.2e-3,
                    EndRadiusM = 3.1e-3,
                    WindingHeightM = 11e-3,
                    MaxBuildM = 4.3e-3,
                },
                3.8e-3
            ),
            ["TradeOffFigure"] = TradeOffFigure.Svg(
                [new TradeOffDot(6173, 0.0312, "8,000 turns"), new TradeOffDot(7391, 0.0347, "9,100 turns")],
                ("DC resistance", "Ω"),
                ("output", "V·s/m")
            ),
        };
        double[] hz = [100, 1000, 4000, 10_000];
        all["CompareFigure"] = CompareFigure.Svg(
            hz,
            [
                new ComparedTrace("a", [0.0, 0.4, 5.1, -11.0], new ResonancePeak(4000, 5.1, 1.8)),
                new ComparedTrace("b", [0.0, 0.3, 4.2, -9.0], null),
            ]
        );
        all["MeasuredFigures curve"] = MeasuredFigures.Curve([(100, 6.2), (4000, 180)], [(100, 6.3), (4000, 178)], "Impedance, kΩ");
        all["MeasuredFigures resonances"] = MeasuredFigures.Resonances([(0, 7100), (470e-12, 3900)], henry: 2.5, farad: 200e-12);
        all["PoleFigure"] = PoleFigure.Svg([("2647-001", [0.041, 0.043, 0.042, 0.040, 0.044, 0.041], [3])], "5 mm");
        all["MeasuredFigures gauge"] = MeasuredFigures.Gauge([(1, 0, 6.21, "Ada"), (4, 1, 6.24, "Joss")], "kΩ", 6.2);
        all["MeasuredFigures acceptance"] = MeasuredFigures.Acceptance([(0, 1), (0.05, 0.5), (0.12, 0)], [(0.05, 0.5)]);
        foreach ((string name, string svg) in StringFiguresTests.Drawn())
        {
            all["StringFigures " + name] = svg;
        }

        ControlChart wall = ControlChartFigureTests.Drifting(80);
        foreach (ChartSeries chart in wall.Charts)
        {
            all["ControlChartFigure " + chart.Name] = ControlChartFigure.Svg(wall, chart, (1000, "kΩ"));
        }

        return all;
    }

    private static Response Curve(LoadCircuit load) =>
        PickupResponse.Compute(new LumpedPickup(6200, 2.5, 120e-12), load, PickupResponse.LogFrequencies(20, 20_000, 300));

    [GeneratedRegex(@"^.{2,}, \S.*$")]
    private static partial Regex Named();

    [GeneratedRegex(@"^M[\d.]+ [\d.]+h44$")]
    private static partial Regex LegendStroke();
}
