using System.Security.Cryptography.X509Certificates;
using Coilwright.Application.Backups;

namespace Coilwright.Application.Shops;

/// <summary>What serving a shop's pages is told beside the shop.</summary>
public sealed record ServingOptions
{
    /// <summary>Names besides this computer's own under which the pages answer.</summary>
    public IReadOnlyList<string> Hosts { get; init; } = [];

    /// <summary>With what the pages are served over HTTPS; null over plain HTTP, which stays on this computer.</summary>
    public X509Certificate2? Certificate { get; init; }

    /// <summary>Shows the invented shop when a person asks for it; null where there is none to offer.</summary>
    public IDemoServer? Demo { get; init; }

    /// <summary>Where backups go, and whether one is made every day; by the button alone unless said.</summary>
    public BackupPlan? Backups { get; init; }
}
