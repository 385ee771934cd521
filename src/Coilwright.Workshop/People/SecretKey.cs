using System.Security.Cryptography;
using System.Text;

namespace Coilwright.Workshop.People;

/// <summary>Keys that a browser or a program keeps: random, and here only their hash.</summary>
public static class SecretKey
{
    private const int Bytes = 32;
    private const string Letters = "abcdefghjkmnpqrstuvwxyz23456789"; // none that is read as another

    /// <summary>A new key of 256 random bits, in letters that stand in an address or a header.</summary>
    public static string Create() =>
        Convert.ToBase64String(RandomNumberGenerator.GetBytes(Bytes)).Replace('+', '-').Replace('/', '_').TrimEnd('=');

    /// <summary>What is kept of a key. It is random throughout, so that a plain hash cannot be turned back by trying.</summary>
    public static string HashOf(string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)));

    /// <summary>A password for the first sign-in, to be read out once and typed: about 79 bits.</summary>
    public static string CreatePassword() =>
        string.Join('-', Enumerable.Range(0, 4).Select(_ => RandomNumberGenerator.GetString(Letters, 4)));
}
