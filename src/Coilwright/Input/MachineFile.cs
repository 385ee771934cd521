using Coilwright.Workshop.Machines;

namespace Coilwright.Input;

/// <summary>Finds the winder that a command names: a file, or a machine of a shop.</summary>
internal static class MachineFile
{
    /// <summary>The machine; null when none was named, or only a name that no shop is asked about.</summary>
    /// <exception cref="WrongInputException">The file is wrong, or the shop has no such machine.</exception>
    public static async Task<Machine?> FindAsync(string? named, string? shop, CommandContext desk, CancellationToken cancel)
    {
        if (named is null)
        {
            return null;
        }

        if (named == "-" || File.Exists(named) || named.EndsWith(".json", StringComparison.OrdinalIgnoreCase))
        {
            return MachineReader.ReadFile(await InputFile.ReadAsync(named, cancel).ConfigureAwait(false)).OrRefuse(named);
        }

        if (shop is null)
        {
            return null;
        }

        await using OpenShop open = await OpenShop.OpenAsync(shop, desk, cancel).ConfigureAwait(false);
        return await open.FindMachineAsync(named, cancel).ConfigureAwait(false);
    }
}
