using System;
using System.Threading;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>Keeps one scratchpad for the next caller: no allocation while calls do not overlap, and none is shared when they do.</summary>
internal sealed class ScratchPool<T>
    where T : class
{
    private readonly Func<T> _create;
    private T? _spare;

    public ScratchPool(Func<T> create) => _create = create;

    public T Rent() => Interlocked.Exchange(ref _spare, null) ?? _create();

    public void Return(T scratch) => Volatile.Write(ref _spare, scratch);
}
