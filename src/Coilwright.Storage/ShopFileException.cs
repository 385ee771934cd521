namespace Coilwright.Storage;

/// <summary>A shop's file cannot be used as it is; nothing in it was changed. The message is for people.</summary>
public sealed class ShopFileException : IOException
{
    public ShopFileException(string message, Exception? cause = null)
        : base(message, cause) { }
}
