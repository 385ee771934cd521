using System.Security.Cryptography;
using Coilwright.Workshop.Exports;

namespace Coilwright.Formats.Exports;

/// <summary>Holds the files of an export against what the export says of them.</summary>
public static class ExportHashes
{
    /// <summary>Names of files that are there and are not as they were written.</summary>
    public static IReadOnlyList<string> Changed(string folder, ExportManifest manifest)
    {
        IEnumerable<(string Name, string Sha256)> all = manifest
            .Files.Select(file => (file.Name, file.Sha256))
            .Concat(manifest.Documents.Select(document => (document.Name, document.Sha256)));
        return [.. all.Where(one => IsInside(one.Name) && IsOther(Path.Combine(folder, one.Name), one.Sha256)).Select(one => one.Name)];
    }

    /// <summary>A manifest may have been written by anybody: what lies outside the folder is not looked at.</summary>
    private static bool IsInside(string name) => !Path.IsPathRooted(name) && !name.Split('/', '\\').Contains("..");

    private static bool IsOther(string path, string sha256)
    {
        if (!File.Exists(path))
        {
            return false; // told by whoever reads it
        }

        using FileStream file = File.OpenRead(path);
        return !string.Equals(Convert.ToHexString(SHA256.HashData(file)), sha256, StringComparison.OrdinalIgnoreCase);
    }
}
