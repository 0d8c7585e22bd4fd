using System;
using System.Collections.Generic;
using System.Collections.ObjectModel;

namespace Refrigerant.Recovery.Numerics;

/// <summary>A read-only dictionary that equals another of the same keys and values, in any order.</summary>
internal sealed class ValueMap<TKey, TValue> : ReadOnlyDictionary<TKey, TValue>, IEquatable<ValueMap<TKey, TValue>>
    where TKey : notnull
{
    /// <param name="entries">The entries, which the caller hands over and keeps no other hold of.</param>
    public ValueMap(Dictionary<TKey, TValue> entries)
        : base(entries)
    {
    }

    public bool Equals(ValueMap<TKey, TValue>? other)
    {
        if (other is null || other.Count != Count)
        {
            return false;
        }

        foreach (KeyValuePair<TKey, TValue> entry in this)
        {
            if (!other.TryGetValue(entry.Key, out TValue? value) || !EqualityComparer<TValue>.Default.Equals(entry.Value, value!))
            {
                return false;
            }
        }

        return true;
    }

    public override bool Equals(object? obj) => Equals(obj as ValueMap<TKey, TValue>);

    public override int GetHashCode()
    {
        int hash = Count;
        foreach (KeyValuePair<TKey, TValue> entry in this)
        {
            hash ^= unchecked((entry.Key.GetHashCode() * 31) + (entry.Value?.GetHashCode() ?? 0));
        }

        return hash;
    }
}
