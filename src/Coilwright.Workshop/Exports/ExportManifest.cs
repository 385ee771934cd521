namespace Coilwright.Workshop.Exports;

/// <summary>What an export says of itself.</summary>
/// <param name="ShopName">Name of the shop.</param>
/// <param name="CreatedUtc">When the shop was made.</param>
/// <param name="Files">Its tables.</param>
/// <param name="Documents">Documents that lines of them name.</param>
public sealed record ExportManifest(
    string ShopName,
    DateTimeOffset CreatedUtc,
    IReadOnlyList<ExportedFile> Files,
    IReadOnlyList<ExportedDocument> Documents
)
{
    /// <summary>Records of all tables together.</summary>
    public long Records => Files.Sum(file => file.Records);
}

/// <summary>A table as it was written.</summary>
/// <param name="Name">Its file.</param>
/// <param name="Records">Its records.</param>
/// <param name="Sha256">SHA-256 of the file, in small letters.</param>
public sealed record ExportedFile(string Name, long Records, string Sha256);

/// <summary>A document as it was written.</summary>
/// <param name="Name">Its file, with its folder.</param>
/// <param name="Sha256">SHA-256 of the file, in small letters.</param>
public sealed record ExportedDocument(string Name, string Sha256);
