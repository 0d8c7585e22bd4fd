using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Linq;
using System.Reflection;
using System.Runtime.CompilerServices;
using Refrigerant.Recovery.Fluids;
using UnitsNet;

namespace Refrigerant.Recovery.Tests;

/// <summary>Values of any type that a member takes, to be tried one after the other: which of them is in its range only the member knows.</summary>
internal static class SampleValues
{
    private const int DeepestNesting = 4;

    private static readonly double[] Numbers = [0.5, 0.02, 1.5, 3, 20, 290, 3600, 2e5, 0.9, 0.001, 1e-5, 1.1, 1000, 0, 400];

    public static IEnumerable<object> Of(Type type, int depth = 0)
    {
        type = Nullable.GetUnderlyingType(type) ?? type;
        if (Quantity.Infos.FirstOrDefault(info => info.ValueType == type) is QuantityInfo quantity)
        {
            return Numbers.Select(number => (object)Quantity.From(number, quantity.BaseUnitInfo.Value));
        }

        return type == typeof(double) ? Numbers.Cast<object>()
            : type == typeof(int) ? [1, 2, 5, 40]
            : type == typeof(bool) ? [true, false]
            : type == typeof(string) ? ["sample", "2026-01"]
            : type == typeof(DateTime) ? [new DateTime(2026, 1, 15)]
            : type == typeof(Fluid) ? [Fluid.Get("R-134a"), Fluid.Get("R-22")]
            : type.IsEnum ? Enum.GetValues(type).Cast<object>()
            : type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>) ? Lists(type.GetGenericArguments()[0], depth)
            : (type.IsClass || type.Assembly == typeof(Fluid).Assembly) && depth < DeepestNesting ? Made(type, depth)
            : [];
    }

    /// <summary>The shortest way to make an object, and the arguments that it takes.</summary>
    public static object? Make(MethodBase maker, int depth, out object?[] arguments)
    {
        ParameterInfo[] parameters = maker.GetParameters();
        object[][] samples = [.. parameters.Select(p => p.IsOptional ? [] : Of(p.ParameterType, depth + 1).Take(Numbers.Length).ToArray())];
        for (int k = 0; k < Numbers.Length; k++)
        {
            arguments = [.. parameters.Select((p, i) => p.IsOptional ? p.DefaultValue : samples[i].Length == 0 ? null : samples[i][Math.Min(k, samples[i].Length - 1)])];
            if (TryMake(maker, arguments) is object made)
            {
                return made;
            }
        }

        arguments = [];
        return null;
    }

    /// <summary>What is made of arguments; null where one is outside its range.</summary>
    public static object? TryMake(MethodBase maker, object?[] arguments)
    {
        try
        {
            return maker is ConstructorInfo constructor ? constructor.Invoke(arguments) : maker.Invoke(null, arguments);
        }
        catch (TargetInvocationException e) when (e.InnerException is ArgumentException or PropertyRangeException)
        {
            return null;
        }
    }

    private static IEnumerable<object> Lists(Type item, int depth)
    {
        foreach (object value in Of(item, depth + 1).Take(Numbers.Length))
        {
            Array list = Array.CreateInstance(item, 1);
            list.SetValue(value, 0);
            yield return list;
        }
    }

    /// <summary>By each way with as little as it needs, then with one thing more.</summary>
    private static IEnumerable<object> Made(Type type, int depth)
    {
        MethodBase[] makers =
        [
            .. type.GetConstructors().Where(c => c.IsDefined(typeof(SetsRequiredMembersAttribute)) || !type.GetProperties().Any(p => p.IsDefined(typeof(RequiredMemberAttribute)))).Cast<MethodBase>()
                .Concat(type.GetMethods(BindingFlags.Public | BindingFlags.Static).Where(m => m.ReturnType == type && !m.IsSpecialName && !m.IsGenericMethod))
                .OrderBy(maker => maker.GetParameters().Length),
        ];
        return makers.Select(maker => Make(maker, depth, out _)).Concat(makers.SelectMany(maker => WithMore(maker, depth))).OfType<object>();
    }

    private static IEnumerable<object?> WithMore(MethodBase maker, int depth) =>
        Make(maker, depth, out object?[] arguments) is null ? [] :
        from parameter in maker.GetParameters()
        where parameter.IsOptional
        from value in Of(parameter.ParameterType, depth + 1).Take(Numbers.Length)
        where !Equals(value, parameter.DefaultValue)
        select TryMake(maker, [.. arguments.Select((a, i) => i == parameter.Position ? value : a)]);
}
