using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using System.Threading.Tasks;
using Refrigerant.Recovery.Fluids;
using Xunit;

namespace Refrigerant.Recovery.Tests;

/// <summary>Nothing in place of something is refused at once, with the name of the parameter, by every public call.</summary>
public class NullArgumentTests
{
    private const int Tries = 16;

    [Fact]
    public void Every_public_call_refuses_null_and_names_the_parameter()
    {
        var nullability = new NullabilityInfoContext();
        var wrong = new List<string>();
        int tried = 0;
        foreach (MethodBase call in Calls())
        {
            ParameterInfo[] parameters = call.GetParameters();
            foreach (ParameterInfo parameter in parameters.Where(p => !p.ParameterType.IsValueType && !p.ParameterType.IsByRef && !p.IsOptional && nullability.Create(p).WriteState == NullabilityState.NotNull))
            {
                object? instance = call.IsStatic || call is ConstructorInfo ? null : SampleValues.Of(call.DeclaringType!).FirstOrDefault();
                if (instance is null && !call.IsStatic && call is not ConstructorInfo)
                {
                    continue;
                }

                object?[][] samples = [.. parameters.Select(p => p == parameter || p.IsOptional || p.ParameterType.IsByRef ? [p.IsOptional ? p.DefaultValue : null] : SampleValues.Of(p.ParameterType).Take(Tries).ToArray<object?>())];
                if (samples.Any(values => values.Length == 0))
                {
                    continue;
                }

                tried++;
                if (!Enumerable.Range(0, Tries).Any(k => Refuses(call, instance, [.. samples.Select((values, i) => values[(k + i) % values.Length])], parameter.Name!)))
                {
                    wrong.Add($"{call.DeclaringType!.Name}.{call.Name}: {parameter.Name}");
                }
            }
        }

        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
        Assert.True(tried > 150, $"{tried} tried");
    }

    private static IEnumerable<MethodBase> Calls() =>
        from type in typeof(Fluid).Assembly.GetExportedTypes()
        where !type.IsInterface && !typeof(Delegate).IsAssignableFrom(type) && !typeof(Exception).IsAssignableFrom(type) && !type.IsGenericTypeDefinition
        from call in type.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly).Cast<MethodBase>()
            .Concat(type.IsAbstract ? [] : type.GetConstructors())
        where !call.IsSpecialName || call is ConstructorInfo
        where !call.IsGenericMethodDefinition && !call.Name.StartsWith('<')
        select call;

    private static bool Refuses(MethodBase call, object? instance, object?[] arguments, string name)
    {
        try
        {
            object? made = call is ConstructorInfo constructor ? constructor.Invoke(arguments) : call.Invoke(instance, arguments);
            return made is Task task && Names(task.Exception?.InnerException, name);
        }
        catch (TargetInvocationException e)
        {
            return Names(e.InnerException, name);
        }
    }

    /// <summary>A member that a constructor sets is named as the member is.</summary>
    private static bool Names(Exception? thrown, string name) => thrown is ArgumentNullException refused && string.Equals(refused.ParamName, name, StringComparison.OrdinalIgnoreCase);
}
