using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using System.Threading;
using Xunit.Abstractions;
using Xunit.Sdk;

namespace Refrigerant.Recovery.Mutation;

/// <summary>Runs classes of tests one after the other in this process, in a given order.</summary>
internal sealed class TestClasses
{
    private readonly ILookup<string, IXunitTestCase> _cases;
    private readonly ILookup<string, IXunitTestCase> _methods;
    private readonly ITestFrameworkExecutor _executor;
    private readonly Options _options = new();

    public TestClasses(string assembly)
    {
        Assembly tests = Assembly.Load(assembly);
        var framework = new XunitTestFramework(new Sink(_ => { }));
        var found = new List<IXunitTestCase>();
        using var done = new ManualResetEventSlim();
        using ITestFrameworkDiscoverer discoverer = framework.GetDiscoverer(Reflector.Wrap(tests));
        discoverer.Find(
            false,
            new Sink(message =>
            {
                if (message is ITestCaseDiscoveryMessage { TestCase: IXunitTestCase test })
                {
                    found.Add(test);
                }
                else if (message is IDiscoveryCompleteMessage)
                {
                    done.Set();
                }
            }),
            _options);
        done.Wait();
        _cases = found.ToLookup(test => test.TestMethod.TestClass.Class.Name);
        _methods = found.ToLookup(test => $"{test.TestMethod.TestClass.Class.Name}.{test.TestMethod.Method.Name}");
        _executor = framework.GetExecutor(tests.GetName());
    }

    /// <summary>Names of all classes.</summary>
    public IEnumerable<string> Names => _cases.Select(group => group.Key);

    /// <summary>All methods: their classes, and their names with them.</summary>
    public IEnumerable<(string Class, string Name)> Methods => _cases.SelectMany(group => group.Select(test => (group.Key, $"{group.Key}.{test.TestMethod.Method.Name}")).Distinct());

    /// <summary>Runs a class, or a method of one.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="onFailure">Told each test that fails, at once.</param>
    /// <returns>Seconds of processor time.</returns>
    public double Run(string name, Action<string> onFailure)
    {
        using var done = new ManualResetEventSlim();
        TimeSpan start = Environment.CpuUsage.TotalTime;
        _executor.RunTests(
            [.. _cases[name], .. _methods[name]],
            new Sink(message =>
            {
                if (message is ITestFailed failed)
                {
                    onFailure(failed.Test.DisplayName);
                }
                else if (message is IErrorMessage or ITestClassCleanupFailure or ITestCleanupFailure)
                {
                    onFailure(name);
                }
                else if (message is ITestAssemblyFinished)
                {
                    done.Set();
                }
            }),
            _options);
        done.Wait();
        return (Environment.CpuUsage.TotalTime - start).TotalSeconds;
    }

    private sealed class Sink(Action<IMessageSinkMessage> take) : IMessageSink
    {
        public bool OnMessage(IMessageSinkMessage message)
        {
            lock (this)
            {
                take(message);
            }

            return true;
        }
    }

    private sealed class Options : ITestFrameworkDiscoveryOptions, ITestFrameworkExecutionOptions
    {
        private readonly Dictionary<string, object?> _values = new()
        {
            ["xunit.discovery.PreEnumerateTheories"] = false,
            ["xunit.execution.DisableParallelization"] = true,
            ["xunit.execution.SynchronousMessageReporting"] = true,
        };

        public TValue GetValue<TValue>(string name) => _values.TryGetValue(name, out object? value) ? (TValue)value! : default!;

        public void SetValue<TValue>(string name, TValue value) => _values[name] = value;
    }
}
