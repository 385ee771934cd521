namespace Coilwright.Application.Listening;

/// <summary>What was asked for last, by what it is made from: a bounded memory.</summary>
/// <param name="most">How many are kept; the one longest not asked for goes first.</param>
/// <typeparam name="TKey">What one is made from, whole.</typeparam>
/// <typeparam name="TValue">What is kept.</typeparam>
internal sealed class RecentlyUsed<TKey, TValue>(int most)
    where TKey : notnull
    where TValue : class
{
    private readonly Lock _gate = new();
    private readonly Dictionary<TKey, LinkedListNode<(TKey Key, TValue Value)>> _known = [];
    private readonly LinkedList<(TKey Key, TValue Value)> _order = new();

    /// <summary>How many are kept now.</summary>
    public int Count
    {
        get
        {
            lock (_gate)
            {
                return _known.Count;
            }
        }
    }

    /// <summary>What is kept, or null.</summary>
    public TValue? Find(TKey key)
    {
        lock (_gate)
        {
            if (!_known.TryGetValue(key, out LinkedListNode<(TKey Key, TValue Value)>? node))
            {
                return null;
            }

            _order.Remove(node);
            _order.AddFirst(node);
            return node.Value.Value;
        }
    }

    /// <summary>Keeps it.</summary>
    public TValue Keep(TKey key, TValue value)
    {
        lock (_gate)
        {
            if (_known.Remove(key, out LinkedListNode<(TKey Key, TValue Value)>? old))
            {
                _order.Remove(old);
            }

            _known[key] = _order.AddFirst((key, value));
            while (_known.Count > most)
            {
                _known.Remove(_order.Last!.Value.Key);
                _order.RemoveLast();
            }

            return value;
        }
    }
}
