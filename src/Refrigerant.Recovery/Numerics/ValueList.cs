using System;
using System.Collections.Generic;
using System.Collections.ObjectModel;

namespace Refrigerant.Recovery.Numerics;

/// <summary>A read-only list that equals another of the same members in the same order, so that a record which holds it is a value.</summary>
internal sealed class ValueList<T> : ReadOnlyCollection<T>, IEquatable<ValueList<T>>
{
    /// <param name="members">The members, which the caller hands over and keeps no other hold of.</param>
    public ValueList(T[] members)
        : base(members)
    {
    }

    public bool Equals(ValueList<T>? other)
    {
        if (other is null || other.Count != Count)
        {
            return false;
        }

        for (int i = 0; i < Count; i++)
        {
            if (!EqualityComparer<T>.Default.Equals(this[i], other[i]))
            {
                return false;
            }
        }

        return true;
    }

    public override bool Equals(object? obj) => Equals(obj as ValueList<T>);

    public override int GetHashCode()
    {
        int hash = Count;
        foreach (T member in this)
        {
            hash = unchecked((hash * 31) + (member?.GetHashCode() ?? 0));
        }

        return hash;
    }
}
