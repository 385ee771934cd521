using Coilwright.Physics.Circuit;

namespace Coilwright.Input;

/// <summary>What hangs on the pickup: the load a person named, or a usual one.</summary>
/// <param name="Circuit">The load.</param>
/// <param name="Words">What it is, for people.</param>
public sealed record LoadOption(LoadCircuit Circuit, string Words)
{
    /// <summary>500 kΩ volume and tone (22 nF) full up, 500 pF of cable, 1 MΩ input: common practice, no source.</summary>
    private static readonly LoadCircuit s_player = new()
    {
        Volume = new VolumeControl(500e3, 1),
        Tone = new ToneControl(500e3, 22e-9, 1),
        CableCapacitanceF = 500e-12,
        InputResistanceOhm = 1e6,
    };

    public static async Task<LoadOption> ReadAsync(string? path, CancellationToken cancel) =>
        await RecipeFile.ReadLoadAsync(path, cancel).ConfigureAwait(false) is { } circuit
            ? new LoadOption(circuit, path!)
            : new LoadOption(
                s_player,
                "500 kΩ volume, 500 kΩ tone with 22 nF, both full, 500 pF of cable, 1 MΩ input (assumed; name another with --load)"
            );
}
