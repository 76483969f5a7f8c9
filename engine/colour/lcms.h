// lcms2's objects as values that go away by themselves. For this folder only: nobody else sees lcms2.
#pragma once

#include "engine/destroy.h"

#include <cstdint>
#include <lcms2.h>
#include <memory>
#include <span>

namespace stoneproof::lcms {

/// What is made in one context belongs to one thread at a time; two contexts share nothing.
using Context = std::unique_ptr<_cmsContext_struct, Destroy<cmsDeleteContext>>;
using Profile = std::unique_ptr<void, Destroy<cmsCloseProfile>>;
using Transform = std::unique_ptr<void, Destroy<cmsDeleteTransform>>;
using Curve = std::unique_ptr<cmsToneCurve, Destroy<cmsFreeToneCurve>>;

/// A context whose messages go nowhere; null without memory. Must outlive what is made in it.
inline Context silent_context() {
  Context context(cmsCreateContext(nullptr, nullptr));
  if (context) cmsSetLogErrorHandlerTHR(context.get(), [](cmsContext, cmsUInt32Number, const char *) {});
  return context;
}

/// Null where lcms2 cannot open it. The bytes are copied.
inline Profile open(const Context &context, std::span<const std::uint8_t> icc) {
  if (!context || icc.size() > UINT32_MAX) return nullptr;
  return Profile(
      cmsOpenProfileFromMemTHR(context.get(), icc.data(), static_cast<cmsUInt32Number>(icc.size())));
}

/// Exact: no tables beforehand in place of the profiles' own reckoning. Null where a profile lacks what the
/// conversion needs.
inline Transform transform(const Context &context, const Profile &from, cmsUInt32Number from_format,
                           const Profile &to, cmsUInt32Number to_format, cmsUInt32Number flags = 0) {
  return Transform(cmsCreateTransformTHR(context.get(), from.get(), from_format, to.get(), to_format,
                                         INTENT_RELATIVE_COLORIMETRIC,
                                         flags | cmsFLAGS_NOOPTIMIZE | cmsFLAGS_NOCACHE));
}

} // namespace stoneproof::lcms
