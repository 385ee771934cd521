using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Recipes.Circuits;

namespace Coilwright.Input;

/// <summary>What hangs on the pickup: the load a person named, or a usual one.</summary>
/// <param name="Circuit">The load.</param>
/// <param name="Words">What it is, for people.</param>
public sealed record LoadOption(LoadCircuit Circuit, string Words)
{
    public static async Task<LoadOption> ReadAsync(string? path, CancellationToken cancel) =>
        await RecipeFile.ReadLoadAsync(path, cancel).ConfigureAwait(false) is { } circuit
            ? new LoadOption(circuit, path!)
            : new LoadOption(
                UsualLoad.Player.Load,
                "500 kΩ volume, 500 kΩ tone with 22 nF, both full, 500 pF of cable, 1 MΩ input (assumed; name another with --load)"
            );
}
