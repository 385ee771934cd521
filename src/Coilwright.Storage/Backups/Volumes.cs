namespace Coilwright.Storage.Backups;

/// <summary>Which volume a path lies on: the longest mount point, or the drive, that it begins with.</summary>
internal static class Volumes
{
    /// <summary>The volume of a path of this computer; links are followed.</summary>
    public static string Of(string path) => Of(Real(Path.GetFullPath(path)), DriveInfo.GetDrives().Select(drive => drive.Name));

    /// <summary>The mount point that holds a path; the path's root when none does.</summary>
    internal static string Of(string path, IEnumerable<string> mounts)
    {
        StringComparison alike = OperatingSystem.IsWindows() ? StringComparison.OrdinalIgnoreCase : StringComparison.Ordinal;
        string asked = Path.TrimEndingDirectorySeparator(path) + Path.DirectorySeparatorChar;
        return mounts
            .Where(mount => asked.StartsWith(Path.TrimEndingDirectorySeparator(mount).TrimEnd('/') + Path.DirectorySeparatorChar, alike))
            .MaxBy(mount => mount.Length)
            ?? Path.GetPathRoot(path)
            ?? path;
    }

    /// <summary>The path with every link in it followed, as far as it exists.</summary>
    private static string Real(string path)
    {
        string root = Path.GetPathRoot(path) ?? "";
        string real = root;
        foreach (string part in path[root.Length..].Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries))
        {
            string next = Path.Combine(real, part);
            real = Directory.Exists(next) ? Directory.ResolveLinkTarget(next, returnFinalTarget: true)?.FullName ?? next : next;
        }

        return real;
    }
}
