using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using Refrigerant.Recovery.Fluids;
using Xunit;

namespace Refrigerant.Recovery.Tests;

/// <summary>A folder is a namespace is a layer; a layer uses only those above it in this list.</summary>
public class LayeringTests
{
    private const BindingFlags Everything =
        BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly string[] Layers =
    [
        "Numerics", "Findings", "Fluids", "Gauges", "Equipment", "Flow", "Oils", "Cylinders", "Processes", "Residuals", "Rules", "Planning", "Estimation", "Records",
    ];

    [Fact]
    public void Every_layer_uses_only_the_layers_above_it()
    {
        var breaches = new SortedSet<string>(StringComparer.Ordinal);
        foreach (Type type in typeof(Fluid).Assembly.GetTypes().Where(t => LayerOf(t) >= 0))
        {
            foreach (Type used in UsedBy(type))
            {
                if (LayerOf(used) > LayerOf(type))
                {
                    breaches.Add($"{type.FullName} uses {used.FullName}");
                }
            }
        }

        Assert.Empty(breaches);
    }

    [Fact]
    public void Every_public_type_lies_in_a_layer() =>
        Assert.Empty(typeof(Fluid).Assembly.GetExportedTypes().Where(t => LayerOf(t) < 0).Select(t => t.FullName));

    private static int LayerOf(Type type)
    {
        const string Root = "Refrigerant.Recovery.";
        string? name = type.Namespace;
        return name is null || !name.StartsWith(Root, StringComparison.Ordinal)
            ? -1
            : Array.IndexOf(Layers, name.Substring(Root.Length).Split('.')[0]);
    }

    private static IEnumerable<Type> UsedBy(Type type)
    {
        IEnumerable<Type> direct = type.GetFields(Everything).Select(f => f.FieldType)
            .Concat(type.GetProperties(Everything).Select(p => p.PropertyType))
            .Concat(type.GetInterfaces())
            .Append(type.BaseType ?? typeof(object));
        foreach (MethodBase method in type.GetMethods(Everything).Concat<MethodBase>(type.GetConstructors(Everything)))
        {
            direct = direct.Concat(method.GetParameters().Select(p => p.ParameterType));
            direct = direct.Concat(method.GetMethodBody()?.LocalVariables.Select(v => v.LocalType) ?? []);
            direct = direct.Concat(Called(method));
            if (method is MethodInfo info)
            {
                direct = direct.Append(info.ReturnType);
            }
        }

        return direct.SelectMany(Unwrap).Distinct();
    }

    private static IEnumerable<Type> Unwrap(Type type)
    {
        while (type.HasElementType)
        {
            type = type.GetElementType()!;
        }

        return type.IsGenericType ? type.GetGenericArguments().SelectMany(Unwrap).Append(type) : [type];
    }

    /// <summary>The declaring types of everything the method's body names: each metadata token that resolves in its module.</summary>
    private static IEnumerable<Type> Called(MethodBase method)
    {
        byte[]? il = method.GetMethodBody()?.GetILAsByteArray();
        if (il is null)
        {
            yield break;
        }

        for (int i = 1; i + 4 <= il.Length; i++)
        {
            // call 28, callvirt 6F, newobj 73, ldsfld 7E, ldfld 7B, newarr 8D, castclass 74, isinst 75
            if (il[i - 1] is 0x28 or 0x6F or 0x73 or 0x7E or 0x7B or 0x8D or 0x74 or 0x75 && Resolve(method, BitConverter.ToInt32(il, i)) is { } type)
            {
                yield return type;
            }
        }
    }

    private static Type? Resolve(MethodBase method, int token)
    {
        try
        {
            MemberInfo? member = method.Module.ResolveMember(
                token,
                method.DeclaringType?.IsGenericType == true ? method.DeclaringType.GetGenericArguments() : null,
                method.IsGenericMethod ? method.GetGenericArguments() : null);
            return member as Type ?? member?.DeclaringType;
        }
        catch (Exception e) when (e is ArgumentException or BadImageFormatException)
        {
            return null;
        }
    }
}
