namespace Coilwright.Application.Shops;

/// <summary>A shop could not be opened or made; its message is for people.</summary>
public sealed class ShopRefusedException(string message, Exception cause) : Exception(message, cause);
