using System.Text.Json;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Tests.Recipes;
using Json.Schema;

namespace Coilwright.Workshop.Tests.Machines;

public sealed class MachineReaderTests
{
    private static readonly JsonSchema s_schema = Schema();

    public static TheoryData<string> DemoMachines =>
        [
            .. Directory
                .GetFiles(Path.Combine(DemoFiles.Root, "demo", "machines"), "*.json")
                .Select(path => Path.GetFileName(path))
                .Order(StringComparer.Ordinal),
        ];

    [Theory]
    [MemberData(nameof(DemoMachines))]
    public void Demo_machines_are_read_and_satisfy_the_schema(string file)
    {
        string json = File.ReadAllText(Path.Combine(DemoFiles.Root, "demo", "machines", file));
        Assert.Empty(MachineReader.Read(json).Problems);
        Assert.True(Satisfies(json));
    }

    [Theory]
    [InlineData("""{ "format": "coilwright.machine/1", "kind": "gear" }""", "traverse")]
    [InlineData("""{ "format": "coilwright.machine/1", "kind": "hand-guided", "counter": { "turns": 100.6 } }""", "counter.counted")]
    [InlineData(
        """{ "format": "coilwright.machine/1", "kind": "hand-guided", "counter": { "turns": 100, "counted": 20 } }""",
        "counter.turns"
    )]
    [InlineData("""{ "format": "coilwright.machine/1", "kind": "timed", "counter": { "turns": 100, "counted": 100 } }""", "counter")]
    [InlineData("""{ "format": "coilwright.machine/1", "kind": "hand-guided", "timed": { "speedSpread": "8 %" } }""", "timed")]
    [InlineData(
        """{ "format": "coilwright.machine/1", "kind": "stepper", "traverse": { "travelPerStep": "3 mm" } }""",
        "traverse.travelPerStep"
    )]
    [InlineData("""{ "format": "coilwright.machine/1", "kind": "handguided" }""", "kind")]
    [InlineData("""{ "format": "coilwright.machine/1", "kind": "hand-guided", "speed": { "low": 300, "high": "900 rpm" } }""", "speed.low")]
    [InlineData("""{ "format": "coilwright.machine/1", "kind": "hand-guided", "spindels": 2 }""", "spindels")]
    [InlineData(
        """{ "format": "coilwright.machine/1", "kind": "hand-guided", "ownTensions": [ { "gauge": "AWG 99", "tension": "11 gf" } ] }""",
        "ownTensions[0].gauge"
    )]
    public void What_is_wrong_is_named_by_its_path(string json, string field) =>
        Assert.Contains(MachineReader.Read(json).Problems, problem => problem.Field == field);

    [Fact]
    public void Several_mistakes_are_told_at_once() =>
        Assert.Equal(
            3,
            MachineReader
                .Read(
                    """{ "format": "coilwright.machine/1", "name": "W", "kind": "hand-guided", "spindles": """
                        + """0, "facesYou": "left", "speed": { "low": "900 rpm", "high": "300 rpm" } }"""
                )
                .Problems.Count
        );

    /// <summary>
    /// 100 counts while the mark passes 100.6 times: × 1.006, so that 5,000 real turns are 4,970 counts (5,000 ÷ 1.006 = 4,970.2).
    /// </summary>
    [Fact]
    public void A_marked_test_corrects_the_counter_with_its_doubt()
    {
        ReadOutcome<CounterTest> test = CounterTest.Read("100.6", "100");

        Assert.Equal(1.006, test.Value!.Correction.Value, 1e-12);
        Assert.Equal(0.0005, (test.Value.Correction.High - test.Value.Correction.Low) / 2, 1e-12);
        Assert.Equal("turns", Assert.Single(CounterTest.Read("300", "100").Problems).Field);
    }

    /// <summary>
    /// Independent of the formula: coils simulated with the stated scatter of speed and of stopping lie inside the interval 95 times of
    /// 100.
    /// </summary>
    [Fact]
    public void The_spread_of_a_timed_run_holds_ninety_five_of_a_hundred_coils()
    {
        TimedRun run = new(SpeedSpread: 0.08, SpeedSpreadStated: true, StopS: 20);
        const double Seconds = 300,
            Rpm = 1000;
        double spread = run.TurnsSpread(Seconds),
            nominal = Seconds * Rpm / 60;
        Random random = new(7);
        int inside = Enumerable
            .Range(0, 20_000)
            .Count(_ =>
            {
                double rpm = Rpm * (1 + 0.08 / 1.96 * Normal(random)),
                    seconds = Seconds + 20 / 1.96 * Normal(random);
                return Math.Abs(rpm * seconds / 60 / nominal - 1) <= spread;
            });
        Assert.InRange(inside / 20_000.0, 0.94, 0.96); // three standard deviations of the count are 0.005
    }

    [Theory]
    [InlineData(1400, 1200)]
    [InlineData(1200, 1200)]
    [InlineData(900, 800)]
    [InlineData(100, 400)]
    public void A_stepped_machine_takes_the_speed_below_the_one_wanted(double wanted, double set) =>
        Assert.Equal(set, new SpeedRange(400, 1200, [400, 800, 1200]).Nearest(wanted));

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static bool Satisfies(string json)
    {
        using JsonDocument document = JsonDocument.Parse(json);
        return s_schema.Evaluate(document.RootElement).IsValid;
    }

    private static JsonSchema Schema()
    {
        BuildOptions options = new() { SchemaRegistry = new SchemaRegistry() };
        JsonSchema.FromFile(Path.Combine(DemoFiles.Root, "schemas", "quantity.json"), options);
        return JsonSchema.FromFile(Path.Combine(DemoFiles.Root, "schemas", "machine.json"), options);
    }
}
