using Coilwright.Storage;
using Coilwright.Workshop.Backups;

namespace Coilwright.Application.Backups;

/// <summary>Where backups of a shop go, and how many stay.</summary>
/// <param name="Folders">Folders; each gets every backup.</param>
/// <param name="Keep">How many stay in each, 1 or more.</param>
/// <param name="IsDaily">True when one is made every day while the shop is served, and a person is told when that fails.</param>
/// <param name="IsStated">True when a person named the folders; false for the default.</param>
public sealed record BackupPlan(IReadOnlyList<string> Folders, int Keep, bool IsDaily, bool IsStated)
{
    /// <summary>The folder "backups" beside the shop's file; of a shop on a server, beside this computer's own.</summary>
    public static string UsualFolder(string shopPath) =>
        Path.Combine(Path.GetDirectoryName(Path.GetFullPath(FileOf(shopPath)))!, "backups");

    /// <summary>The shop's file; for a shop on a server, a name on this computer for what lies beside a file elsewhere.</summary>
    public static string FileOf(string shopPath) =>
        ShopConnection.IsFile(shopPath)
            ? shopPath
            : Path.Combine(
                Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.Create),
                "coilwright",
                "server"
            );

    /// <summary>The plan of a shop: the folders that a person named, or the usual one.</summary>
    public static BackupPlan Of(string shopPath, IReadOnlyList<string> stated, bool isDaily) =>
        new(
            stated.Count > 0 ? [.. stated.Select(Path.GetFullPath).Distinct(StringComparer.Ordinal)] : [UsualFolder(shopPath)],
            BackupRules.UsualKeep,
            isDaily,
            stated.Count > 0
        );
}
