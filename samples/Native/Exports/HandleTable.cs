using System.Collections.Concurrent;
using System.Threading;

namespace Refrigerant.Recovery.Samples.Native;

/// <summary>Handles of what a caller makes and frees. A number is never given twice, so that a freed one is told from a living one.</summary>
internal sealed class HandleTable<T>(string kind)
    where T : class
{
    private readonly ConcurrentDictionary<int, T> _living = [];
    private int _last;

    public int Add(T value)
    {
        int handle = Interlocked.Increment(ref _last);
        _living[handle] = value;
        return handle;
    }

    public T Get(int handle) => _living.TryGetValue(handle, out T? value) ? value : throw new InvalidHandleException(kind, handle);

    public void Remove(int handle)
    {
        if (!_living.TryRemove(handle, out _))
        {
            throw new InvalidHandleException(kind, handle);
        }
    }
}
