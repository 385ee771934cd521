namespace Coilwright.Shared;

/// <summary>
/// One command line for each command that writes JSON; @name is a file of the demo, SHOP the demo's shop, and other words in capitals
/// are files that the test writes.
/// </summary>
internal static class JsonCommandLines
{
    public static IReadOnlyList<string> All { get; } =
    [
        "predict @recipes/breakwater-twin.json --load @loads/player.json --json",
        "respond @recipes/harbour-bridge.json --load @loads/player.json --points 20 --json",
        "respond @circuits/harbour-pair.json --points 20 --json",
        "solve @recipes/harbour-bridge.json --want dcResistance=6.5kΩ --vary turns --json",
        "spread @recipes/harbour-bridge.json --samples 200 --seed 1 --json",
        "identify @originals/bench-seven.json --json",
        "wind @recipes/harbour-bridge.json --machine @machines/gear-winder.json --json",
        "judge @recipes/harbour-bridge.json COILS --json",
        "pair PAIRS --json",
        "fit CURVE --json",
        "resonance --peak 9.19kHz --peak 470pF:4.14kHz --json",
        "listen @recipes/harbour-bridge.json --load @loads/player.json --length 0.5s --wav WAV --json",
        "gauge GAUGE --json",
        "meter read @meters/bridge.json --tcp METER --json",
        "lots @lots/rods.json --json",
        "plan @plans/one-old-winder.json --json",
        "batch list --shop SHOP --json",
        "batch show H-12 --shop SHOP --json",
        "stock list --shop SHOP --json",
        "stock show 0117 --shop SHOP --json",
        "trace 0117 --shop SHOP --json",
        "piece show 2647-001 --shop SHOP --json",
        "learn --propose --shop SHOP --json",
        "batch close B-7 --reason wire --shop SHOP --json",
        "batch reopen B-7 --shop SHOP --json",
    ];

    /// <summary>A bridge that answers two values, for as long as the tests run.</summary>
    private static readonly Lazy<SimulatedMeter> s_meter = new(() => SimulatedMeter.Saying("+2.53100E+00,+6.20000E+03\n"));

    /// <summary>The words of a line, with paths for its files.</summary>
    public static string[] Words(string line, string root, IReadOnlyDictionary<string, string> files) =>
        [
            .. line.Split(' ')
                .Select(word => word.StartsWith('@') ? Path.Combine(root, "demo/" + word[1..]) : files.GetValueOrDefault(word, word)),
        ];

    /// <summary>The files that the lines name in capitals.</summary>
    /// <param name="write">Writes a file of the test and tells its path.</param>
    /// <param name="root">The repository.</param>
    /// <param name="shop">The demo's shop.</param>
    public static IReadOnlyDictionary<string, string> Files(Func<string, string, string> write, string root, string shop) =>
        new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["SHOP"] = shop,
            ["METER"] = s_meter.Value.Address,
            ["WAV"] = write("heard.wav", ""),
            ["COILS"] = write(
                "coils.csv",
                "tag,dcResistance [kΩ],temperature [°C],inductance [H],inductanceAt "
                    + "[Hz]\nC-1,6.21,20,2.53,1000\nC-2,6.05,20,2.42,1000\nC-3,0.26,20,,\n"
            ),
            ["PAIRS"] = write("pairs.csv", "tag,family,dcResistance [kΩ]\nS-1,slug,4.10\nS-2,slug,4.12\nC-1,screw,4.11\nC-2,screw,4.09\n"),
            ["CURVE"] = Path.Combine(root, "tests/Reference/circuit/exact-coil.csv"),
            ["GAUGE"] = write("gauge.csv", "value,reference\n1.01,1\n0.99,1\n2.02,2\n1.97,2\n3.01,3\n3.00,3\n"),
        };
}
