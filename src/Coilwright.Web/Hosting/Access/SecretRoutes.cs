namespace Coilwright.Web.Hosting.Access;

/// <summary>
/// What is shown of a secret recipe to those without the right to it: what is needed to wind and read a batch of it, to finish its pieces,
/// and to ship them. Every other address that is about a recipe, its batches or its charts is refused.
/// </summary>
internal static class SecretRoutes
{
    /// <summary>Addresses that show what must be set for a batch: each look is kept on record, and they end with the batch.</summary>
    private static readonly string[] s_winder = ["/batches/{id:guid}/wind", "/batches/{id:guid}/setup", "/batches/{id:guid}/setup.pdf"];

    /// <summary>Addresses of a batch at which work is entered.</summary>
    private static readonly string[] s_work =
    [
        "/batches/{id:guid}/wind/undo",
        "/batches/{id:guid}/enter",
        "/batches/{id:guid}/undo",
        "/batches/{id:guid}/tags",
        "/api/batches/{id:guid}/coils",
        "/api/batches/{id:guid}/events",
        "/api/batches/{id:guid}/undo",
    ];

    /// <summary>Papers of a piece that say what it is for whoever has it, and nothing of how it is wound.</summary>
    private static readonly string[] s_papers = ["certificate", "packing", "repair", "wiring"];

    /// <summary>True for a paper of a piece, and true of those that a customer gets.</summary>
    public static bool IsPaper(string pattern) => pattern == "/pieces/{serial}/papers/{paper}";

    /// <summary>True for a paper that stays open: its name as it stands in the address, with or without ".pdf".</summary>
    public static bool IsOpenPaper(string paper) => s_papers.Contains(paper.Split('.')[0]);

    /// <summary>True for what must be set at the winder.</summary>
    public static bool IsWinder(string pattern) => s_winder.Contains(pattern);

    /// <summary>True for an address of a batch that stays open to those who do the work.</summary>
    public static bool IsWork(string pattern) => s_work.Contains(pattern);

    /// <summary>True for an address that shows a recipe's coils in a chart: the recipe stands in its question.</summary>
    public static bool IsChart(string pattern) => pattern.StartsWith("/charts", StringComparison.Ordinal);

    /// <summary>True for an address of one recipe.</summary>
    public static bool IsRecipe(string pattern) => pattern.StartsWith("/recipes/{id:guid}", StringComparison.Ordinal);

    /// <summary>True for an address of one batch.</summary>
    public static bool IsBatch(string pattern) =>
        pattern.StartsWith("/batches/{id:guid}", StringComparison.Ordinal)
        || pattern.StartsWith("/api/batches/{id:guid}", StringComparison.Ordinal);
}
