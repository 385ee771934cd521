using System.Diagnostics;
using System.Runtime.InteropServices;
using System.Text;
using Microsoft.Win32.SafeHandles;

namespace Coilwright.Bench.Tests.Meters;

/// <summary>The far end of a serial line that is none: a pseudo-terminal of Linux, on which a line is answered with a line.</summary>
internal sealed class PseudoTerminal : IDisposable
{
    private const int ReadWrite = 2,
        NotControlling = 0x100;

    private readonly SafeFileHandle _handle,
        _near;
    private readonly FileStream _stream;
    private readonly Thread _work;

    private PseudoTerminal(int descriptor, SafeFileHandle near, string name, Func<string, string> answer)
    {
        Name = name;
        _near = near;
        _handle = new SafeFileHandle(descriptor, ownsHandle: true);
        _stream = new FileStream(_handle, FileAccess.ReadWrite, bufferSize: 0);
        _work = new Thread(() => Serve(answer)) { IsBackground = true };
        _work.Start();
    }

    /// <summary>The name of the near end.</summary>
    public string Name { get; }

    public static PseudoTerminal Open(Func<string, string> answer)
    {
        int descriptor = posix_openpt(ReadWrite | NotControlling);
        Assert.True(descriptor >= 0 && grantpt(descriptor) == 0 && unlockpt(descriptor) == 0, "no pseudo-terminal");
        byte[] name = new byte[64];
        Assert.Equal(0, ptsname_r(descriptor, name, (nuint)name.Length));
        string path = Encoding.ASCII.GetString(name).TrimEnd('\0');
        // Raw, as a serial line is: nothing is echoed and no byte is changed.
        using Process stty = Process.Start("stty", ["-F", path, "raw", "-echo"]);
        stty.WaitForExit();
        Assert.Equal(0, stty.ExitCode);
        // The far end reads an error while nobody holds the near one: it is held here.
        SafeFileHandle near = new(open(path, ReadWrite | NotControlling), ownsHandle: true);
        return new PseudoTerminal(descriptor, near, path, answer);
    }

    public void Dispose()
    {
        _stream.Dispose();
        _handle.Dispose();
        _near.Dispose();
    }

    private void Serve(Func<string, string> answer)
    {
        StringBuilder line = new();
        byte[] one = new byte[1];
        try
        {
            while (true)
            {
                if (_stream.Read(one, 0, 1) == 0)
                {
                    return;
                }

                if (one[0] != (byte)'\n')
                {
                    line.Append((char)one[0]);
                    continue;
                }

                foreach (byte sent in Encoding.ASCII.GetBytes(answer(line.ToString().Trim())))
                {
                    _stream.WriteByte(sent);
                }

                line.Clear();
            }
        }
        catch (Exception ended) when (ended is IOException or ObjectDisposedException) { }
    }

    [DllImport("libc"), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int posix_openpt(int flags);

    [DllImport("libc"), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int grantpt(int descriptor);

    [DllImport("libc"), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int unlockpt(int descriptor);

    [DllImport("libc"), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int ptsname_r(int descriptor, byte[] name, nuint length);

    [DllImport("libc", CharSet = CharSet.Ansi, BestFitMapping = false), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int open([MarshalAs(UnmanagedType.LPStr)] string path, int flags);
}
